import fc from "fast-check";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { Wiring } from "../../../src/wiring/nets.ts";

export type WireRecord = { from: string; to: string; how?: string };
export const wiresOf = (guard: BuildInput) => guard.wires as WireRecord[];

/** The same guard with every lug's name put through a function. */
export function withLugs(guard: BuildInput, moved: (lug: string) => string): BuildInput {
  const wires = wiresOf(guard).map((wire) => ({ ...wire, from: moved(wire.from), to: moved(wire.to) }));
  return { ...guard, wires: wires as BuildInput["wires"] };
}

/** The same guard with lugs of one part exchanged, by their names within it. */
export function exchanged(guard: BuildInput, ...pairs: (readonly [string, string])[]): BuildInput {
  const other = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
  return withLugs(guard, (lug) => other.get(lug) ?? lug);
}

const ofPart = (lug: string) => lug.split(".")[0]!;

/** The same guard under other names: `names` by the old ones. */
export function renamed(guard: BuildInput, names: ReadonlyMap<string, string>): BuildInput {
  const parts = Object.fromEntries(Object.entries(guard.parts).map(([name, part]) => [names.get(name) ?? name, part]));
  const moved = withLugs(guard, (lug) => (names.get(ofPart(lug)) ?? ofPart(lug)) + lug.slice(ofPart(lug).length));
  return { ...moved, parts };
}

function inOrderOf<T>(all: readonly T[], seeds: readonly number[]): T[] {
  const keys = new Map(all.map((each, i) => [each, (seeds[i % seeds.length]! * (i + 1) * 7919) % 104729]));
  return [...all].sort((a, b) => keys.get(a)! - keys.get(b)!);
}

/** The same guard with every net wired as another tree, its parts in another order and wires the other way round. */
export function otherRoutes(guard: BuildInput, seeds: readonly number[]): BuildInput {
  const wiring = new Wiring(readBuild(guard));
  const { netOfLug, count } = wiring.wiredNets();
  const nets = Array.from({ length: count }, (_, net) =>
    inOrderOf(
      wiring.lugs.lugs.flatMap(({ name }, lug) => (netOfLug[lug] === net ? [name] : [])),
      seeds,
    ),
  );
  const wires = nets.flatMap((net) =>
    net.slice(1).map((lug, i) => {
      const from = net[seeds[i % seeds.length]! % (i + 1)]!;
      return (seeds[i % seeds.length]! % 2 ? { from, to: lug } : { from: lug, to: from }) as WireRecord;
    }),
  );
  const parts = Object.fromEntries(inOrderOf(Object.entries(guard.parts), seeds));
  return { ...guard, parts, wires: inOrderOf(wires, seeds) as BuildInput["wires"] };
}

const swapOf = (a: string, b: string) => [a, b] as const;

/** Lugs to exchange for each turn of a part that leaves an expanded plan's guard the same. */
export function turnsIn(guard: BuildInput): (readonly (readonly [string, string])[])[] {
  const ends = new Set(wiresOf(guard).flatMap(({ from, to }) => [from, to]));
  return Object.entries(guard.parts).flatMap(([name, part]) => {
    if (part.kind === "cap" || part.kind === "resistor") return [[swapOf(`${name}.a`, `${name}.b`)]];
    const control = part.kind === "pot" && part.drives ? `${name}.s` : name;
    const throws = part.kind === "pot" || (part.kind === "switch" && part.type === "dpdt") ? 3 : 4;
    const poles = Array.from({ length: throws }, (_, i) => swapOf(`${control}.A${i}`, `${control}.B${i}`));
    const turns = [];
    if (part.kind === "switch" && part.type !== "toggle-3") turns.push(poles);
    if (part.kind === "pot" && part.drives) turns.push(poles);
    if (part.kind === "pot" && part.role === "tone" && !ends.has(`${name}.3`))
      turns.push([swapOf(`${name}.1`, `${name}.2`)]);
    return turns;
  });
}

export const anySeeds = fc.array(fc.nat(5000), { minLength: 12, maxLength: 12 });
