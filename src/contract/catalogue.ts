import * as z from "zod";
import { BASES } from "../build-file/sources/rule.ts";
import type { Answered } from "./wire.ts";

const entries = (meaning: string) => z.array(z.record(z.string(), z.unknown())).describe(meaning);

export const catalogueAnswerSchema = z.object({
  pickups: entries("generic pickups: name, title, coils"),
  metals: entries("metals about a coil and what each takes of its EMF"),
  pots: entries("customary values"),
  toneCaps: entries("customary values"),
  trebleBleeds: entries("customary values"),
  dielectrics: entries("what caps are made of: tan δ at 1 and 10 kHz, usual tolerance, change over temperature"),
  cables: entries("a metre: capacitance, and the centre conductor's resistance"),
  loads: entries("what a guitar is plugged into"),
  layouts: entries("what a plan's `layout` may be, its pickups, and how many volumes and tones it takes"),
  planOptions: entries(
    "what can be changed of a plan: name, title, meaning, and the reasons why a choice may not go together with the rest",
  ),
  plans: entries("customary plans to start from: id, title, plan"),
  switches: entries("contact tables: type, lugs, and for each position the groups of joined lugs"),
  strings: z.record(z.string(), z.unknown()).describe("the set that phrases are plucked on, lengths in metres"),
  defaults: z.record(z.string(), z.unknown()).describe("what is taken where a build file says nothing"),
  sources: z
    .array(
      z.object({
        basis: z.enum(BASES),
        words: z.string(),
        of: z.array(z.string()).describe("values that rest on it, by paths: pots.250k.value"),
      }),
    )
    .describe("where every value of the lists above comes from; each stands under one of them"),
});

export type CatalogueAnswer = Answered<typeof catalogueAnswerSchema>;
