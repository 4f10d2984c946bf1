import type { Build } from "../../../build-file/schema.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { partWords } from "../../../build-file/words/part-words.ts";
import { fewNames } from "./few-names.ts";
import { fieldsApart, mainValue, valueChanges } from "./value-changes.ts";
import { wireChanges } from "./wire-changes.ts";

/** One thing that the second guard has otherwise than the first. */
export interface Change {
  /** As the subject of a sentence, in the singular: "500 kΩ instead of 250 kΩ at volume and tone". */
  readonly words: string;
  /** The parts that it is about, by name. */
  readonly parts: readonly string[];
  /** A part's own value, which asks with which pickup it is heard, and not at which dial. */
  readonly isOfPickups: boolean;
}

/** Whether a part is said to stand as another, "47 nF as tone cap", or a value to be at it. */
const STANDS_AS = new Set(["cap", "resistor"]);

function partChanges(a: Build, b: Build, words: ReadonlyMap<string, string>): Change[] {
  const found = new Map<string, string[]>();
  for (const [name, part] of Object.entries(b.parts)) {
    const before = a.parts[name];
    if (!before) continue;
    for (const change of valueChanges(before, part)) {
      const key = `${change} ${STANDS_AS.has(part.kind) ? "as" : "at"}`;
      found.set(key, [...(found.get(key) ?? []), name]);
    }
  }
  return [...found].map(([start, parts]) => {
    const kinds = parts.map((name) => b.parts[name]!);
    const isTrack = kinds.every((part) => part.kind === "pickup" || (part.kind === "pot" && !part.noLoad));
    return { words: `${start} ${fewNames(parts.map((name) => words.get(name) ?? name))}`, parts, isOfPickups: isTrack };
  });
}

function comings(
  a: Build,
  b: Build,
  wordsA: ReadonlyMap<string, string>,
  wordsB: ReadonlyMap<string, string>,
): Change[] {
  const only = (one: Build, other: Build) => Object.keys(one.parts).filter((name) => !(name in other.parts));
  const said = (build: Build, name: string, words: ReadonlyMap<string, string>) =>
    [mainValue(build.parts[name]!), words.get(name) ?? name].filter(Boolean).join(" ");
  return [
    ...only(b, a).map((name) => ({ words: `an added ${said(b, name, wordsB)}`, parts: [name], isOfPickups: false })),
    ...only(a, b).map((name) => ({
      words: `leaving out the ${said(a, name, wordsA)}`,
      parts: [name],
      isOfPickups: false,
    })),
  ];
}

type Cable = NonNullable<Build["cable"]>;

function cableWords(cable: Cable | undefined, start = "a lead"): string {
  if (!cable) return "no lead";
  const { length, capacitance } = cable;
  return `${start} of ${showQuantity(length, "length")} (${showQuantity(length * capacitance, "capacitance")})`;
}

function outside(a: Build, b: Build): Change[] {
  const of = (words: string): Change => ({ words, parts: [], isOfPickups: true });
  const { cable: cableA, load: loadA, strings: stringsA } = a;
  const { cable: cableB, load: loadB, strings: stringsB } = b;
  const isApart = (one: object = {}, other: object = {}) => fieldsApart(one, other).length > 0;
  const ohms = [loadA, loadB].map(({ resistance }) => showQuantity(resistance, "resistance"));
  const load = ohms[0] === ohms[1] ? "another amplifier's input" : `an input of ${ohms[1]} instead of ${ohms[0]}`;
  return [
    ...(isApart(cableA, cableB)
      ? [of(`${cableWords(cableB)} instead of ${cableWords(cableA, cableB ? "one" : "a lead")}`)]
      : []),
    ...(isApart(loadA, loadB) ? [of(load)] : []),
    ...(isApart(stringsA, stringsB) ? [of("other strings")] : []),
  ];
}

/** All that the second guard has otherwise than the first and that may be heard, parts by their names in the file. */
export function changesBetween(a: Build, b: Build): Change[] {
  const [wordsA, wordsB] = [partWords(a.parts), partWords(b.parts)];
  const wires = wireChanges(a, b, wordsB);
  return [
    ...partChanges(a, b, wordsB),
    ...comings(a, b, wordsA, wordsB),
    ...(wires === undefined ? [] : [{ words: wires, parts: [], isOfPickups: false }]),
    ...outside(a, b),
  ];
}
