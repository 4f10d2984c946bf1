import { partsOfKind } from "../../../build-file/build-file.ts";
import { lugsOfPart, switchControls } from "../../../build-file/lugs.ts";
import { type Bench, type Fault, type FaultKind, fault } from "../fault.ts";

type Pair = readonly [string, string];

function neighbours(lugs: readonly string[]): Pair[] {
  return lugs.slice(1).map((lug, index): Pair => [lugs[index]!, lug]);
}

function allPairs(lugs: readonly string[]): Pair[] {
  return lugs.flatMap((lug, index) => lugs.slice(index + 1).map((other): Pair => [lug, other]));
}

/** Lugs of one pole stand in a row; on a two-throw switch the poles' lugs stand side by side as well. */
function switchNeighbours(prefix: string, lugs: readonly string[]): Pair[] {
  const poles = new Map<string, string[]>();
  for (const lug of lugs) {
    const pole = /^[A-H]\d+$/.test(lug) ? lug[0]! : "";
    poles.set(pole, [...(poles.get(pole) ?? []), lug]);
  }
  const rows = [...poles.values()];
  const aside = rows.every((row) => row.length === 3) ? neighbours(rows.map((_, index) => String(index))) : [];
  const across = aside.flatMap(([left, right]) =>
    rows[Number(left)]!.map((lug, index): Pair => [lug, rows[Number(right)]![index]!]),
  );
  return [...rows.flatMap(neighbours), ...across].map(([a, b]): Pair => [prefix + a, prefix + b]);
}

function shorts(bench: Bench, kind: FaultKind, pairs: readonly Pair[], word: (pair: Pair) => string): Fault[] {
  return pairs.flatMap((pair) => {
    const [a, b] = [bench.lug(pair[0]).index, bench.lug(pair[1]).index];
    if (bench.joined(a, b)) return [];
    return [fault(kind, pair, word(pair), [{ edit: "bridge", lugs: [a, b] }])];
  });
}

const touching = ([a, b]: Pair) =>
  `${a} and ${b} touch: a solder bridge, a whisker of wire, or bare leads against each other.`;

/** Each lug shorted to the one beside it, on pots, switches, pickups, caps, resistors and the jack. */
export function neighbourShorts(bench: Bench): Fault[] {
  const { parts } = bench.build;
  const pairs = Object.entries(parts).flatMap(([name, part]): Pair[] => {
    const lug = (local: string) => `${name}.${local}`;
    if (part.kind === "pot") {
      const gang: Pair[] = part.gangs
        ? [
            [lug("b1"), lug("b2")],
            [lug("b2"), lug("b3")],
          ]
        : [];
      return [[lug("1"), lug("2")], [lug("2"), lug("3")], ...gang];
    }
    if (part.kind === "cap" || part.kind === "resistor") return [[lug("a"), lug("b")]];
    if (part.kind === "jack") return neighbours(lugsOfPart(name, part).map((each) => each.name));
    if (part.kind === "pickup") return allPairs(lugsOfPart(name, part).map((each) => each.name));
    return [];
  });
  const onSwitches = switchControls(parts).flatMap(({ part, table, onShaft }) =>
    switchNeighbours(onShaft ? `${part}.s.` : `${part}.`, table.lugs),
  );
  // A short across a capacitor is that part's own failing, told there.
  const ofWiring = [...pairs, ...onSwitches].filter(([a]) => parts[a.split(".")[0]!]?.kind !== "cap");
  return shorts(bench, "lugs-shorted", ofWiring, touching);
}

/** Each track lug of a pot against its own case. */
export function caseShorts(bench: Bench): Fault[] {
  const pairs = partsOfKind(bench.build, "pot").flatMap(([name, pot]) =>
    ["1", "2", "3", ...(pot.gangs ? ["b1", "b2", "b3"] : [])].map((lug): Pair => [`${name}.${lug}`, `${name}.case`]),
  );
  return shorts(
    bench,
    "shorted-to-case",
    pairs,
    ([lug, metal]) => `${lug} touches ${metal}: bend the lug away from it.`,
  );
}

/** Each lug of pots, switches and the jack against a shielding foil or plate. */
export function shieldShorts(bench: Bench): Fault[] {
  const shields = partsOfKind(bench.build, "terminal").filter(([, part]) => part.role === "shield");
  const touchable = Object.entries(bench.build.parts).flatMap(([name, part]) =>
    part.kind === "pot" || part.kind === "switch" || part.kind === "jack"
      ? lugsOfPart(name, part).map((lug) => lug.name)
      : [],
  );
  const pairs = shields.flatMap(([shield]) => touchable.map((lug): Pair => [lug, shield]));
  return shorts(
    bench,
    "shorted-to-shield",
    pairs,
    ([lug, shield]) => `${lug} touches ${shield}: the shielding stands against it once the guard is screwed down.`,
  );
}
