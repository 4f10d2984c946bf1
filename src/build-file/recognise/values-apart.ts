import type { Draft } from "../plans/draft.ts";
import { parseQuantity } from "../quantity.ts";
import { type Guard, partOf } from "./guard.ts";

/** A value of the guard's that its plan cannot say. */
export interface ValueApart {
  readonly part: string;
  readonly field: string;
  /** Plain words, to follow the part's name: "has a second gang". */
  readonly words: string;
}

/** Almost always the plan's value is the one written on the guard's part, and need not be read. */
const isWritten = (planned: object, written: object | undefined, field: "capacitance" | "resistance") =>
  Object.is(planned[field as keyof typeof planned], written?.[field as keyof typeof written]);

const farads = (text: number | string) => parseQuantity(text, "capacitance").value;
const ohms = (text: number | string) => parseQuantity(text, "resistance").value;

function potApart(guard: Guard, name: string, drives: unknown): ValueApart[] {
  const pot = partOf(guard, name, "pot");
  const found: ValueApart[] = [];
  if (pot.gangs) found.push({ part: name, field: "gangs", words: "has a second gang" });
  const has = pot.drives?.type;
  if (drives === undefined && pot.drives)
    found.push({ part: name, field: "drives", words: "has a switch on its shaft that the plan has no use for" });
  if (drives !== undefined && has !== "dpdt")
    found.push({
      part: name,
      field: "drives",
      words: `has ${has === undefined ? "no push-pull" : "another switch on its shaft"}`,
    });
  return found;
}

/** What the guard's parts are that no plan can say of them: gangs, idle push-pulls, a second bleed of other values. */
export function valuesApart(guard: Guard, draft: Draft, names: ReadonlyMap<string, string>): ValueApart[] {
  return [...names].flatMap(([planName, name]): ValueApart[] => {
    const [planned, part] = [draft.parts[planName]!, guard.build.parts[name]!];
    const written = guard.written.parts[name];
    if (planned.kind === "pot" && part.kind === "pot") return potApart(guard, name, planned.drives);
    if (part.kind === "jack" && part.stereo) return [{ part: name, field: "stereo", words: "is a stereo jack" }];
    if (isWritten(planned, written, part.kind === "cap" ? "capacitance" : "resistance")) return [];
    if (planned.kind === "cap" && part.kind === "cap" && farads(planned.capacitance) !== part.capacitance)
      return [{ part: name, field: "capacitance", words: "has another value than the plan can say" }];
    if (planned.kind === "resistor" && part.kind === "resistor" && ohms(planned.resistance) !== part.resistance)
      return [{ part: name, field: "resistance", words: "has another value than the plan can say" }];
    return [];
  });
}
