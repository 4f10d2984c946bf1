import { wireEnds, wireHow } from "../describe/wire-ends.ts";
import type { Child } from "../dom/element.ts";
import type { BuildSource, Reading, WireSource } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { stepsInWords, valueInWords } from "./value-words.ts";

export interface Difference {
  /** "volume › resistance". */
  readonly where: string;
  readonly inA: string;
  readonly inB: string;
  /** A connection that only one of the two has. */
  readonly isWire: boolean;
}

/** What does not change the sound and is no part of a comparison. */
const LEFT_OUT = ["label", "place"];

function leaves(value: unknown, path: readonly string[], found: Map<string, string>): Map<string, string> {
  const words = valueInWords(path.at(-1) ?? "", value);
  if (words !== undefined) return found.set(path.join(" › "), words);
  for (const [key, inner] of Object.entries(value as object))
    if (!LEFT_OUT.includes(key)) leaves(inner, [...path, key], found);
  return found;
}

function wireKey(wire: WireSource): string {
  return `${[...wireEnds(wire)].sort().join(" — ")} (${wireHow(wire)})`;
}

function valueDifferences(a: BuildSource, b: BuildSource): Difference[] {
  const { wires: _a, title: _ta, notes: _na, presolder: _pa, parts: partsA, ...restA } = a;
  const { wires: _b, title: _tb, notes: _nb, presolder: _pb, parts: partsB, ...restB } = b;
  const [inA, inB] = [leaves({ ...partsA, ...restA }, [], new Map()), leaves({ ...partsB, ...restB }, [], new Map())];
  return [...new Set([...inA.keys(), ...inB.keys()])]
    .filter((key) => inA.get(key) !== inB.get(key))
    .map((where) => ({ where, inA: inA.get(where) ?? "–", inB: inB.get(where) ?? "–", isWire: false }));
}

function wireDifferences(a: BuildSource, b: BuildSource): Difference[] {
  const [inA, inB] = [new Set(a.wires.map(wireKey)), new Set(b.wires.map(wireKey))];
  const wireIn = (key: string, [a, b]: readonly [string, string]): Difference => ({
    where: `wire ${key}`,
    inA: a,
    inB: b,
    isWire: true,
  });
  const onlyA = [...inA].filter((key) => !inB.has(key)).map((key) => wireIn(key, ["yes", "–"]));
  const onlyB = [...inB].filter((key) => !inA.has(key)).map((key) => wireIn(key, ["–", "yes"]));
  return [...onlyA, ...onlyB];
}

/** What differs between two builds: values, parts and wires. */
export function differencesOf(a: BuildSource, b: BuildSource): Difference[] {
  return [...valueDifferences(a, b), ...wireDifferences(a, b)];
}

/** Where two guards differ, as a person says it, in the words of the guard that has it. */
export function whereInWords({ where, inA, isWire }: Difference, a: Reading, b: Reading): Child[] {
  const speech = speechOf(inA === "–" ? b : a);
  const [part = "", ...fields] = isWire ? [where] : where.split(" › ");
  return [...speech.say(part), ...stepsInWords(fields).map((field) => ` › ${field}`)];
}
