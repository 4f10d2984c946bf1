import * as z from "zod";
import { drawerSchema } from "../drawer/drawer-schema.ts";
import { MAX_SOLDERED_GUARDS } from "../limits.ts";
import { buildField } from "./fields.ts";

export const drawerFields = {
  drawer: drawerSchema.describe("parts, kits and wire that one owns, and what is known of prices"),
  soldered: z
    .array(buildField)
    .max(MAX_SOLDERED_GUARDS)
    .default([])
    .describe("guards whose parts are counted in the drawer and soldered in: what they hold is not free"),
};

export const sourceAnswer = z
  .union([z.object({ item: z.int() }), z.object({ kit: z.int(), content: z.int() })])
  .describe("which of the drawer's items, or what of which kit, from 0");

/** A part as the trade calls it. */
export const describedPart = {
  what: z.string(),
  code: z.string().nullable().describe("what is printed on the part"),
};
