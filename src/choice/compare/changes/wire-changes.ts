import type { Build, Part, Pickup } from "../../../build-file/schema.ts";
import { fewNames } from "./few-names.ts";

const keyOf = ({ from, to }: Build["wires"][number]) => [from, to].sort().join(" ");
const partOf = (lug: string) => lug.split(".")[0]!;

/** Whether a part is in both; another pickup with other leads brings its wires with it. */
function hasSameLeads(a: Part | undefined, b: Part | undefined): boolean {
  if (!a || !b || a.kind !== b.kind) return false;
  if (a.kind !== "pickup" || b.kind !== "pickup") return true;
  const leadsOf = ({ coils, conductors, metal }: Pickup) => [Object.keys(coils), conductors, metal].join();
  return leadsOf(a) === leadsOf(b);
}

/** What else a wire can bring into the curve: its screen. */
const screenOf = (wire: Build["wires"][number]) =>
  "kind" in wire && wire.kind === "screened" ? `${wire.length} ${wire.capacitance}` : "";

function plural(count: number, one: string): string {
  return count === 1 ? `one ${one}` : `${count} ${one}s`;
}

/** Wires between parts that both guards have and that only one of them has laid, in words; undefined where there are none. */
export function wireChanges(a: Build, b: Build, words: ReadonlyMap<string, string>): string | undefined {
  const [inA, inB] = [a, b].map(
    ({ wires }) => new Map(wires.map((wire) => [`${keyOf(wire)} ${screenOf(wire)}`, wire])),
  );
  const isCommon = ({ from, to }: Build["wires"][number]) =>
    [from, to].every((lug) => hasSameLeads(a.parts[partOf(lug)], b.parts[partOf(lug)]));
  const gone = [...inA!].filter(([key, wire]) => !inB!.has(key) && isCommon(wire)).map(([, wire]) => wire);
  const laid = [...inB!].filter(([key, wire]) => !inA!.has(key) && isCommon(wire)).map(([, wire]) => wire);
  if (gone.length + laid.length === 0) return undefined;
  const ends = [...laid, ...gone].flatMap(({ from, to }) => [partOf(from), partOf(to)]);
  const times = (name: string) => ends.filter((end) => end === name).length;
  const parts = [...new Set(ends)].sort((one, other) => times(other) - times(one));
  const called = b.title === "" || b.title === a.title ? "" : ` (“${b.title}”)`;
  const at = `at ${fewNames(parts.map((name) => words.get(name) ?? name))}${called}`;
  if (laid.length === 0) return `leaving out ${plural(gone.length, "wire")} ${at}`;
  if (gone.length === 0) return `adding ${plural(laid.length, "wire")} ${at}`;
  if (gone.length === laid.length) return `moving ${plural(laid.length, "wire")} ${at}`;
  return `other wiring ${at}`;
}
