import { contactLug } from "../../../build-file/lug-names.ts";
import type { BuildInput, PartOf } from "../../../build-file/schema.ts";
import { type SwitchTable, switchTable } from "../../../build-file/switch-types.ts";
import type { SwitchInput } from "../found/switch-part.ts";

/** A lug of the switch that is to go out, of which it must be said which found lug takes its wires. */
export interface Asked {
  readonly lug: string;
  /** The other ends of its wires. */
  readonly wires: readonly string[];
}

export interface InGuard {
  /** The guard with the found switch in it; undefined while lugs are asked about. */
  readonly guard: BuildInput | undefined;
  readonly asks: readonly Asked[];
}

type WireInput = BuildInput["wires"][number];

const endsOf = (wire: WireInput): readonly [string, string] =>
  "from" in wire ? [wire.from, wire.to] : [wire[0], wire[1]];

function withEnds(wire: WireInput, move: (lug: string) => string): WireInput {
  if ("from" in wire) return { ...wire, from: move(wire.from), to: move(wire.to) };
  return [move(wire[0]), move(wire[1])];
}

/** Lugs of the old switch that have wires, with the wires' other ends. */
function wiredLugs(source: BuildInput, part: string, lugs: readonly string[]): Asked[] {
  return lugs.flatMap((lug) => {
    const name = contactLug(part, lug);
    const wires = source.wires.flatMap((wire) => {
      const [from, to] = endsOf(wire);
      return from === name ? [to] : to === name ? [from] : [];
    });
    return wires.length > 0 ? [{ lug, wires }] : [];
  });
}

/** In which positions a lug is joined to any other. */
function jobOf({ positions }: SwitchTable, lug: string): string {
  const isJoined = (groups: SwitchTable["positions"][number]) =>
    groups.some((group) => group.length > 1 && group.includes(lug));
  return positions.map((groups) => (isJoined(groups) ? "1" : "0")).join("");
}

/** Whether a lug of one type does the same job in another: it is named alike, pole by pole, and joined in the same positions. */
function keepsItsJob(old: PartOf<"switch">, found: SwitchInput, lug: string): boolean {
  if (old.positions || found.positions) return false;
  const [before, after] = [switchTable(old), switchTable(found)];
  return after.lugs.includes(lug) && jobOf(before, lug) === jobOf(after, lug);
}

/**
 * The found switch in the place of one of a guard's. Wires stay on the lugs that do the same job; where that is not known, it is asked.
 * @param source the guard in its long form, valid, `part` a switch of it
 * @param moves from a lug of the old switch to one of the new
 */
export function inGuard(
  source: BuildInput,
  part: string,
  found: SwitchInput,
  moves: Readonly<Record<string, string>>,
): InGuard {
  const old = source.parts[part] as PartOf<"switch">;
  const oldLugs = switchTable(old).lugs;
  const asks = wiredLugs(source, part, oldLugs).filter(
    ({ lug }) => moves[lug] === undefined && !keepsItsJob(old, found, lug),
  );
  if (asks.length > 0) return { guard: undefined, asks };
  const move = new Map(oldLugs.map((lug) => [contactLug(part, lug), contactLug(part, moves[lug] ?? lug)]));
  const { label, place } = old as SwitchInput;
  const kept = { ...(label === undefined ? {} : { label }), ...(place === undefined ? {} : { place }) };
  return {
    guard: {
      ...source,
      parts: { ...source.parts, [part]: { ...found, ...kept } },
      wires: source.wires
        .map((wire) => withEnds(wire, (lug) => move.get(lug) ?? lug))
        .filter((wire) => new Set(endsOf(wire)).size === 2),
    },
    asks,
  };
}
