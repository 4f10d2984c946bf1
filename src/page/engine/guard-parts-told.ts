import "./zod-without-eval.ts";
import { describePart } from "../../bench/parts/describe-part.ts";
import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { faultsOf } from "../../build-file/zod-tools.ts";
import { drawerSchema } from "../../drawer/drawer-schema.ts";
import { asItems, countGuard, measurable, type PartsAlike } from "../../drawer/guard-parts.ts";
import type { Need } from "../../drawer/needs.ts";
import { type InputFault, PresolderError } from "../../errors.ts";
import type { KeptReadings } from "../../shelf/guard.ts";
import { spelled } from "../../shelf/search.ts";
import type { DrawerAsked } from "./drawer-answer.ts";

export interface GuardPartsAsked extends DrawerAsked {
  /** Which of the guards. */
  readonly index: number;
  readonly readings: readonly KeptReadings[];
}

export interface PartsTold extends PartsAlike {
  readonly what: string;
}

/** A guard's parts as the drawer takes them: those it has not counted, and those that may be counted there already. */
export interface GuardPartsTold {
  readonly uncounted: readonly PartsTold[];
  readonly counted: readonly PartsTold[];
}

export type GuardPartsReply = GuardPartsTold | { readonly faults: readonly InputFault[] };

function quantityOf(text: string, dimension: "capacitance" | "resistance"): number | undefined {
  try {
    const { value } = parseQuantity(text, dimension);
    return value > 0 ? value : undefined;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

/** What was read last of each part, where a reading is of the part by its name or its words. */
function measuredIn(build: Build, readings: readonly KeptReadings[]): Map<string, number> {
  const words = partWords(build.parts);
  const found = new Map<string, number>();
  const values = readings.toSorted((a, b) => (a.date < b.date ? -1 : 1)).flatMap((each) => each.values);
  for (const [name, dimension] of measurable(build.parts)) {
    const names = [name, words.get(name) ?? name].map(spelled);
    for (const { what, read } of values) {
      const value = names.includes(spelled(what.trim())) ? quantityOf(read, dimension) : undefined;
      if (value !== undefined) found.set(name, value);
    }
  }
  return found;
}

/** @throws PresolderError where the guard asked for cannot be read */
export function guardPartsTold({ drawer: input, guards, index, readings }: GuardPartsAsked): GuardPartsReply {
  const read = drawerSchema.safeParse(input);
  if (!read.success) return { faults: faultsOf(read.error) };
  const build = readBuild(JSON.parse(guards[index]!.file));
  const known = guards.map(({ file, isSoldered }, at) => {
    if (at === index) return { build, isSoldered };
    try {
      return { build: readBuild(JSON.parse(file)), isSoldered };
    } catch (error) {
      if (error instanceof PresolderError || error instanceof SyntaxError) return { build: { parts: {} }, isSoldered };
      throw error;
    }
  });
  const { items } = read.data;
  const measured = measuredIn(build, readings);
  const told = (needs: readonly Need[]) =>
    asItems(needs, measured, items).map((alike) => ({ ...alike, what: describePart(alike.part).what }));
  const { counted, uncounted } = countGuard(read.data, known, index);
  return { counted: told(counted), uncounted: told(uncounted) };
}
