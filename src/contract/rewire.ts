import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { buildField, longFormJson } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const rewireRequestSchema = strict({
  from: buildField.describe("the guard as found"),
  to: buildField.describe("the guard as wanted: its nets count, not its routes"),
});

const stepAnswer = z.object({
  do: z.enum(["open", "make"]).describe("a joint"),
  at: z
    .string()
    .describe(
      "the lug to heat. An open calls lugs as `from` does, a make as `to` does; on the way home the other way round",
    ),
  from: z.string().describe("the wire's lugs: as it was where it is opened, as it will be where it is made"),
  to: z.string(),
  means: z.string().describe("wire, bent lug, jumper, leg, lead, bus wire, braid or inside"),
  wire: z.int().nullable().describe("index in the wires of `from`; null where it comes new or hung free"),
  fate: z
    .enum(["moves", "wire", "part", "free"])
    .describe(
      "moves: opened at one lug and made at another; wire: the whole wire is taken out or put in; part: goes out or comes in with its part; free: a lead or leg that hangs free after it, or did before",
    ),
  partner: z.int().nullable().describe("index of the step that belongs to it, where an end moves or a wire has two"),
  text: z.string().describe("the step in a sentence"),
});

export const rewireAnswerSchema = z.object({
  steps: z.array(stepAnswer).describe("one joint each, the fewest there can be; a lug is heated once where it can be"),
  home: z.array(stepAnswer).describe("the way back to the guard as found, joint by joint"),
  kept: z
    .array(
      z.object({
        wire: z.int().describe("index in the wires of `from`"),
        from: z.string(),
        to: z.string(),
        means: z.string(),
      }),
    )
    .describe("wires that stay, their lugs as `to` calls them"),
  leaving: z.array(z.int()).describe("wires of `from` that go out untouched, between parts that go out"),
  parts: z.object({
    stay: z
      .array(z.object({ from: z.string(), to: z.string() }))
      .describe("by their names in both guards: the same part may be called otherwise"),
    comeIn: z.array(z.object({ name: z.string(), replaces: z.string().nullable() })),
    goOut: z.array(z.object({ name: z.string(), replacedBy: z.string().nullable() })),
  }),
  result: z.any().meta({ ...longFormJson, description: "The long form after the steps" }),
});

export type RewireRequest = Sent<typeof rewireRequestSchema>;
export type RewireBody = z.output<typeof rewireRequestSchema>;
export type RewireAnswer = Answered<typeof rewireAnswerSchema>;
