import { contactLug, trackLugs } from "../../../build-file/lug-names.ts";
import { lugsOfPart, type SwitchControl, switchControls } from "../../../build-file/lugs.ts";
import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Part, Pot } from "../../../build-file/schema.ts";
import { type Fault, type FaultKind, fault } from "../fault.ts";
import type { GuardWiring } from "./guard-wiring.ts";

type Pair = readonly [string, string];

function neighbours(lugs: readonly string[]): Pair[] {
  return lugs.slice(1).map((lug, index): Pair => [lugs[index]!, lug]);
}

function allPairs(lugs: readonly string[]): Pair[] {
  return lugs.flatMap((lug, index) => lugs.slice(index + 1).map((other): Pair => [lug, other]));
}

/** Lugs of one pole stand in a row; on a two-throw switch the poles' lugs stand side by side as well. */
function switchNeighbours({ name, table: { lugs } }: SwitchControl): Pair[] {
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
  return [...rows.flatMap(neighbours), ...across].map(([a, b]): Pair => [contactLug(name, a), contactLug(name, b)]);
}

function shorts(guard: GuardWiring, kind: FaultKind, pairs: readonly Pair[], word: (pair: Pair) => string): Fault[] {
  return pairs.flatMap((pair) => {
    const [a, b] = [guard.lug(pair[0]).index, guard.lug(pair[1]).index];
    if (guard.joined(a, b)) return [];
    return [fault(kind, pair, word(pair), [{ edit: "bridge", lugs: [a, b] }])];
  });
}

const touching = ([a, b]: Pair) =>
  `${a} and ${b} touch: a solder bridge, a whisker of wire, or bare leads against each other.`;

/** The lugs of each of a pot's tracks, in order along it. */
function tracksOf(name: string, { gangs = [] }: Pot): (readonly string[])[] {
  return [0, ...gangs.map((_, index) => index + 1)].map((gang) => trackLugs(name, gang));
}

/** Pairs of a part's lugs that stand beside each other; a switch's are told pole by pole. */
function neighbourPairs(name: string, part: Part): Pair[] {
  const own = () => lugsOfPart(name, part).map((lug) => lug.name);
  switch (part.kind) {
    case "pot":
      return tracksOf(name, part).flatMap(neighbours);
    case "resistor":
    case "jack":
      return neighbours(own());
    case "pickup":
      return allPairs(own());
    // A short across a capacitor is that part's own failing, told there.
    case "cap":
    case "switch":
    case "terminal":
      return [];
  }
}

/** Each lug shorted to the one beside it, on pots, switches, pickups, resistors and the jack. */
export function neighbourShorts(guard: GuardWiring): Fault[] {
  const { parts } = guard.build;
  const pairs = Object.entries(parts).flatMap(([name, part]) => neighbourPairs(name, part));
  const onSwitches = switchControls(parts).flatMap(switchNeighbours);
  return shorts(guard, "lugs-shorted", [...pairs, ...onSwitches], touching);
}

/** Each track lug of a pot against its own case. */
export function caseShorts(guard: GuardWiring): Fault[] {
  const pairs = partsOfKind(guard.build, "pot").flatMap(([name, pot]) =>
    tracksOf(name, pot)
      .flat()
      .map((lug): Pair => [lug, `${name}.case`]),
  );
  return shorts(
    guard,
    "shorted-to-case",
    pairs,
    ([lug, metal]) => `${lug} touches ${metal}: bend the lug away from it.`,
  );
}

/** Each lug of pots, switches and the jack against a shielding foil or plate. */
export function shieldShorts(guard: GuardWiring): Fault[] {
  const shields = partsOfKind(guard.build, "terminal").filter(([, part]) => part.role === "shield");
  const touchable = Object.entries(guard.build.parts).flatMap(([name, part]) =>
    part.kind === "pot" || part.kind === "switch" || part.kind === "jack"
      ? lugsOfPart(name, part).map((lug) => lug.name)
      : [],
  );
  const pairs = shields.flatMap(([shield]) => touchable.map((lug): Pair => [lug, shield]));
  return shorts(
    guard,
    "shorted-to-shield",
    pairs,
    ([lug, shield]) => `${lug} touches ${shield}: the shielding stands against it once the guard is screwed down.`,
  );
}
