import { wireEnds, wireHow } from "../describe/wire-ends.ts";
import type { BuildSource, WireSource } from "../state/reading.ts";

export interface Difference {
  /** "volume › resistance". */
  readonly where: string;
  readonly inA: string;
  readonly inB: string;
}

/** What does not change the sound and is no part of a comparison. */
const LEFT_OUT = ["label", "place"];

function leaves(value: unknown, path: readonly string[], found: Map<string, string>): Map<string, string> {
  if (typeof value !== "object" || value === null) return found.set(path.join(" › "), String(value));
  for (const [key, inner] of Object.entries(value)) if (!LEFT_OUT.includes(key)) leaves(inner, [...path, key], found);
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
    .map((where) => ({ where, inA: inA.get(where) ?? "–", inB: inB.get(where) ?? "–" }));
}

function wireDifferences(a: BuildSource, b: BuildSource): Difference[] {
  const [inA, inB] = [new Set(a.wires.map(wireKey)), new Set(b.wires.map(wireKey))];
  const onlyA = [...inA].filter((key) => !inB.has(key)).map((key) => ({ where: `wire ${key}`, inA: "yes", inB: "–" }));
  const onlyB = [...inB].filter((key) => !inA.has(key)).map((key) => ({ where: `wire ${key}`, inA: "–", inB: "yes" }));
  return [...onlyA, ...onlyB];
}

/** What differs between two builds: values, parts and wires. */
export function differencesOf(a: BuildSource, b: BuildSource): Difference[] {
  return [...valueDifferences(a, b), ...wireDifferences(a, b)];
}
