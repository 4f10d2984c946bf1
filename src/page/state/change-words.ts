import { wireEnds as endsOf } from "../describe/wire-ends.ts";
import type { BuildSource, PartSource, WireSource } from "./reading.ts";

const keyOf = (wire: WireSource) => [...endsOf(wire)].sort().join(" ");

/** Wires of the first that the second has not, each as often as it is there. */
function lacking(first: readonly WireSource[], second: readonly WireSource[]): WireSource[] {
  const there = second.map(keyOf);
  return first.filter((wire) => {
    const at = there.indexOf(keyOf(wire));
    if (at >= 0) there.splice(at, 1);
    return at < 0;
  });
}

interface WireChanges {
  readonly moved: number;
  readonly laid: number;
  readonly takenOut: number;
}

/** A wire that keeps one end has moved; any other is another wire. */
function wireChanges(before: readonly WireSource[], after: readonly WireSource[]): WireChanges {
  const gone = lacking(before, after);
  const come = lacking(after, before);
  const left = [...gone];
  const moved = come.filter((wire) => {
    const at = left.findIndex((other) => endsOf(other).some((lug) => endsOf(wire).includes(lug)));
    if (at >= 0) left.splice(at, 1);
    return at >= 0;
  }).length;
  return { moved, laid: come.length - moved, takenOut: left.length };
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

const wires = (count: number) => counted(count, "wire", "wires");

const KIND_PLURALS: Readonly<Record<string, string>> = { switch: "switches" };

function partChanges(before: BuildSource["parts"], after: BuildSource["parts"]): string[] {
  const count = (parts: BuildSource["parts"], kind: string) =>
    Object.values(parts).filter((part) => part.kind === kind).length;
  const kinds = [...new Set([...Object.values(before), ...Object.values(after)].map(({ kind }) => kind))];
  const counts = kinds.flatMap((kind) => {
    const more = count(after, kind) - count(before, kind);
    if (more === 0) return [];
    const words = counted(Math.abs(more), kind, KIND_PLURALS[kind] ?? `${kind}s`);
    return [`${words} ${more > 0 ? "more" : "less"}`];
  });
  const isChanged = ([name, part]: [string, PartSource]) =>
    name in before && JSON.stringify(before[name]) !== JSON.stringify(part);
  const changed = Object.entries(after).filter(isChanged).length;
  return [...counts, ...(changed > 0 ? [`${counted(changed, "part", "parts")} of another value`] : [])];
}

/** What a change of a guard comes to in wires and parts: "3 wires moved, 1 cap less"; empty where nothing changed. */
export function changeWords(before: BuildSource, after: BuildSource): string {
  const { moved, laid, takenOut } = wireChanges(before.wires, after.wires);
  return [
    ...(moved > 0 ? [`${wires(moved)} moved`] : []),
    ...(laid > 0 ? [`${wires(laid)} laid`] : []),
    ...(takenOut > 0 ? [`${wires(takenOut)} taken out`] : []),
    ...partChanges(before.parts, after.parts),
  ].join(", ");
}
