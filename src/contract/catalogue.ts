import * as z from "zod";
import type { Answered } from "./wire.ts";

const entries = (meaning: string) => z.array(z.record(z.string(), z.unknown())).describe(meaning);

export const catalogueAnswerSchema = z.object({
  pickups: entries("generic pickups: name, title, coils, and the basis of the values"),
  metals: entries("metals about a coil and what each takes of its EMF"),
  pots: entries("customary values"),
  toneCaps: entries("customary values"),
  trebleBleeds: entries("customary values"),
  cables: entries("capacitance a metre"),
  loads: entries("what a guitar is plugged into"),
  layouts: entries("what a plan's `layout` may be, its pickups, and how many volumes and tones it takes"),
  planOptions: entries(
    "what can be changed of a plan: name, title, meaning, and the reasons why a choice may not go together with the rest",
  ),
  plans: entries("customary plans to start from: id, title, plan"),
  switches: entries("contact tables: type, lugs, and for each position the groups of joined lugs"),
  basis: z.record(z.string(), z.string()).describe("what each list rests on"),
});

export type CatalogueAnswer = Answered<typeof catalogueAnswerSchema>;
