import * as z from "zod";
import { partSchema } from "../../build-file/schema.ts";
import { strict } from "../../build-file/zod-tools.ts";
import { MAX_DRAWER_QUANTITY, MAX_PARTS } from "../../limits.ts";

export const drawerField = z
  .array(strict({ part: partSchema, quantity: z.int().min(1).max(MAX_DRAWER_QUANTITY).default(1) }))
  .max(MAX_PARTS)
  .default([])
  .describe("parts already in the drawer, written as in a build file; taken off the parts list");

export const partsListAnswer = z.object({
  lines: z.array(
    z.object({
      what: z.string(),
      code: z.string().nullable().describe("what is printed on the part"),
      quantity: z.int(),
      fromDrawer: z.int(),
      toBuy: z.int(),
      drawer: z.array(z.int()).describe("which of the drawer's items are of this value, from 0"),
      parts: z.array(z.string()).describe("their names in the build"),
    }),
  ),
  wire: z.array(z.object({ colour: z.string(), pieces: z.int(), metres: z.number() })),
  totals: z.object({ parts: z.int(), fromDrawer: z.int(), toBuy: z.int(), wireMetres: z.number() }),
  notes: z.array(z.string()),
});

export const staysOverAnswer = z
  .array(
    z.object({
      what: z.string(),
      code: z.string().nullable(),
      quantity: z.int(),
      drawer: z.array(z.int()).describe("which of the drawer's items it is, from 0"),
    }),
  )
  .describe("what the drawer holds beyond the build's needs");
