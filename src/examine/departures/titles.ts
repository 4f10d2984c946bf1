import type { Fault, FaultKind } from "../../bench/faults/fault.ts";
import { FAULT_SHARES } from "../../bench/faults/priors/fault-shares.ts";
import type { Build } from "../../build-file/schema.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { LugWords } from "../../build-file/words/lug-words.ts";
import { capitalised, listed } from "../../english.ts";

/** A fault in a guard's words: what each of its lugs, its part and its coil are called. */
interface Called {
  readonly fault: Fault;
  readonly build: Build;
  readonly lugs: readonly string[];
  /** The same without their part. */
  readonly own: readonly string[];
  /** Of the part that the first lug is on: "tone capacitor", "bridge humbucker". */
  readonly part: string;
  /** The same, of a pickup of two coils with the coil. */
  readonly coil: string;
}

const pair = ({ lugs }: Called) => listed(lugs);
const between = ({ lugs }: Called) => (lugs.length > 1 ? `${lugs[0]} to ${lugs[1]}` : lugs[0]!);
const ohmsOf = ({ fault: { ohms } }: Called) =>
  ohms === undefined ? "" : `, about ${showQuantity(ohms, "resistance", 2)}`;

/** What a part's edit changes, of what was drawn. */
function drawnValue(build: Build, fault: Fault): { drawn: number; factor: number; dimension: Dimension } | undefined {
  const edit = fault.edits.find((each) => "factor" in each);
  if (!edit || !("factor" in edit)) return undefined;
  const part = build.parts[edit.part];
  if (part?.kind === "cap") return { drawn: part.capacitance, factor: edit.factor, dimension: "capacitance" };
  if (part?.kind === "resistor") return { drawn: part.resistance, factor: edit.factor, dimension: "resistance" };
  if (part?.kind !== "pot") return undefined;
  const track = "gang" in edit && edit.gang > 0 ? part.gangs![edit.gang - 1]! : part;
  return { drawn: track.measured ?? track.resistance, factor: edit.factor, dimension: "resistance" };
}

/** "Tone capacitor: about 47 nF instead of 22 nF". */
function otherValue({ part, build, fault }: Called): string {
  const value = drawnValue(build, fault);
  if (!value) return `${part}: another value`;
  const { drawn, factor, dimension } = value;
  const [is, was] = [showQuantity(drawn * factor, dimension, 2), showQuantity(drawn, dimension, 3)];
  return `${part}: about ${is} instead of ${was}`;
}

function otherTaper({ part, fault: { edits } }: Called): string {
  const edit = edits.find((each) => each.edit === "taper");
  if (edit?.edit !== "taper") return `${part}: another taper`;
  return edit.taper === "linear" ? `${part}: linear, not audio` : `${part}: audio, not linear`;
}

/** The numbers that positions have changed for. */
function movedPositions({ fault: { edits } }: Called): number[] {
  const edit = edits.find((each) => each.edit === "positions");
  if (edit?.edit !== "positions") return [];
  return edit.order.map((_, index) => index + 1).filter((number) => edit.order[number - 1] !== number);
}

const TITLES: Readonly<Partial<Record<FaultKind, (called: Called) => string>>> = {
  "wire-open": (each) => `open connection: ${between(each)}`,
  "joint-open": (each) => `cold joint: ${between(each)}`,
  "joint-resistive": (each) => `poor joint${ohmsOf(each)}: ${between(each)}`,
  "lugs-shorted": (each) => `touching each other: ${pair(each)}`,
  "shorted-to-case": (each) => `touching each other: ${pair(each)}`,
  "shorted-to-shield": (each) => `on the shielding: ${each.lugs[0]}`,
  "leads-swapped": ({ part }) => `${part}: its two leads exchanged`,
  "coil-leads-swapped": ({ coil }) => `${coil}: start and finish exchanged`,
  "outer-lugs-swapped": ({ part }) => `${part}: works backwards, its outer lugs exchanged`,
  "pot-lugs-swapped": ({ part, fault: { lugs } }) =>
    `${part}: what belongs on lugs ${listed(lugs.map((lug) => lug.split(".").at(-1)!))} exchanged`,
  "jack-swapped": () => "jack: tip and sleeve exchanged",
  "wrong-switch-lug": ({ part, own }) => `${part}: a wire on its ${own[1]}, not on its ${own[0]}`,
  "switch-wires-swapped": ({ part, own }) => `${part}: wires exchanged between its ${own[0]} and its ${own[1]}`,
  "pickups-swapped": (each) => `places exchanged: ${pair(each)}`,
  "lead-on-wrong-net": ({ lugs }) => `${lugs[0]}: on ${lugs[2]} instead of ${lugs[1]}`,
  "wrong-pot-value": otherValue,
  "pot-value": otherValue,
  "resistor-value": otherValue,
  "cap-ten-times": otherValue,
  "cap-tenth": otherValue,
  "wrong-cap-value": otherValue,
  "cap-value": otherValue,
  "coil-open": ({ coil }) => `${coil}: broken winding`,
  "coil-shorted": ({ coil }) => `${coil}: shorted winding`,
  "coil-value": ({ coil }) => `${coil}: another winding than drawn`,
  "cap-open": ({ part }) => `${part}: open inside`,
  "cap-shorted": ({ part }) => `${part}: shorted`,
  "wrong-taper": otherTaper,
  "contact-open": ({ lugs }) => `contact that never closes: ${lugs[0]}`,
  "pot-wiper-worn": (each) => `${each.part}: worn wiper${ohmsOf(each)}`,
  "pot-end-leaks": (each) => `${each.part}: leaks at its counter-clockwise end${ohmsOf(each)}`,
  "known-resistor": (each) => `known resistor other than told${ohmsOf(each)}`,
  "positions-reversed": () => "switch positions counted from the other end",
  "positions-swapped": (each) => `positions ${listed(movedPositions(each))} exchanged`,
};

/** A "cap" is a capacitor where nothing else says of what sort a part is. */
const spelledOut = (words: string) => words.replace(/\bcap\b/, "capacitor");

function calledIn(build: Build, fault: Fault): Called {
  const words = new LugWords(build);
  const [name = "", coil = ""] = fault.lugs[0]?.split(".") ?? [];
  const part = spelledOut(words.parts.get(name) ?? name);
  const spec = build.parts[name];
  const isOfCoil = spec?.kind === "pickup" && Object.keys(spec.coils).length > 1 && coil in spec.coils;
  const said = (lug: string) =>
    fault.kind === "pickups-swapped" ? (words.parts.get(lug.split(".")[0]!) ?? lug) : spelledOut(words.of(lug));
  const lugs = fault.lugs.map(said);
  return {
    fault,
    build,
    lugs: lugs.map((each) => each.replace(", ", " ")),
    own: lugs.map((each) => each.slice(each.indexOf(", ") + 2)),
    part,
    coil: isOfCoil ? `${part}, ${coil} coil` : part,
  };
}

/** What a departure is called in a few words, without codes: "Tone capacitor: about 47 nF instead of 22 nF". */
export function titleOf(build: Build, fault: Fault): string {
  const make = TITLES[fault.kind];
  return capitalised(make ? make(calledIn(build, fault)) : FAULT_SHARES[fault.kind].words[0]);
}
