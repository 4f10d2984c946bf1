import { layoutOf } from "../../plans/layouts.ts";
import { type Guard, namesOf, netAt } from "../guard.ts";
import type { Sketch, ToneSketch } from "../sketch.ts";
import { legNets } from "./legs.ts";
import type { Roles } from "./roles.ts";
import { otherCommon, type Signal } from "./signal.ts";

/** A tone's cap and the net that feeds the two, whichever comes first and whichever way round. */
function toneRow(guard: Guard, pot: string, cap: string, ground: number): { feed: number } | undefined {
  const ends = [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.2`)];
  for (const middle of ends) {
    if (middle === ground) continue;
    const legs = legNets(guard, cap);
    if (!legs.includes(middle)) continue;
    const rest = [ends[1 - ends.indexOf(middle)]!, legs[1 - legs.indexOf(middle)]!];
    if (rest.includes(ground)) return { feed: rest[0] === ground ? rest[1]! : rest[0]! };
  }
  return undefined;
}

interface ReadTone {
  readonly pot: string;
  readonly cap: string | undefined;
  readonly feed: number;
}

export function readTones(guard: Guard, roles: Roles): ReadTone[] {
  const caps = namesOf(guard, "cap");
  const volumeNets = new Set(roles.volumes.flatMap((name) => [netAt(guard, `${name}.2`), netAt(guard, `${name}.3`)]));
  const isBleed = (cap: string) => legNets(guard, cap).every((net) => volumeNets.has(net));
  const tones = roles.tones.map((pot) => {
    const cap = caps.find((each) => toneRow(guard, pot, each, roles.ground));
    return {
      pot,
      cap,
      feed: cap === undefined ? netAt(guard, `${pot}.1`) : toneRow(guard, pot, cap, roles.ground)!.feed,
    };
  });
  const free = () => caps.filter((cap) => !isBleed(cap) && !tones.some((tone) => tone.cap === cap));
  for (const [i, tone] of tones.entries()) {
    if (tone.cap !== undefined) continue;
    const usual = tones.length === 1 ? "cap" : `cap${i + 1}`;
    const touching = free().find((cap) => legNets(guard, cap).includes(netAt(guard, `${tone.pot}.2`)));
    tone.cap = touching ?? free().find((cap) => cap === usual) ?? free().find((cap) => !cap.startsWith("bleed"));
  }
  return tones;
}

interface FedTones {
  readonly tones: ToneSketch[];
  readonly sharedCap: string | undefined;
  readonly toneFeed: Sketch["toneFeed"];
}

export function fedTones(
  guard: Guard,
  roles: Roles,
  read: readonly ReadTone[],
  signal: Signal,
  owners: Sketch["volumes"],
  hasToneThrows: boolean,
): FedTones {
  let isAfter = false;
  const neckFirst = [...layoutOf(roles.layout).pickups].reverse();
  const toneCommon = roles.selector === undefined ? -1 : otherCommon(guard, roles.selector, signal);
  const tones = read.map(({ pot, cap, feed }): ToneSketch => {
    const at = (nets: Readonly<Record<string, number>>) => neckFirst.filter((pickup) => nets[pickup] === feed);
    for (const { pot: volume, pickup } of owners) {
      if (pickup === undefined || feed === signal.selected) continue;
      const nets = [netAt(guard, `${volume}.3`), netAt(guard, `${volume}.2`)];
      if (nets.includes(feed)) return { pot, cap, pickups: [pickup] };
    }
    const picked = hasToneThrows ? at(signal.toneThrows) : [];
    if (picked.length > 0) {
      isAfter ||= toneCommon === signal.output && toneCommon !== signal.selected;
      return { pot, cap, pickups: picked.length === neckFirst.length ? [] : picked };
    }
    if (feed !== signal.selected && feed === signal.output) isAfter = true;
    return { pot, cap, pickups: feed === signal.selected || feed === signal.output ? [] : at(signal.throws) };
  });
  const [first, second] = read;
  const isShared = second !== undefined && first!.cap !== undefined && first!.cap === second.cap;
  return { tones, sharedCap: isShared ? first!.cap : undefined, toneFeed: isAfter ? "after-volume" : "before-volume" };
}

/** Tones in the plan's order where their names are the plan's, else as their pickups lie, the neck's first. */
export function ordered(tones: readonly ToneSketch[], neckFirst: readonly string[]): ToneSketch[] {
  const isNamed = tones.every(({ pot }, i) => pot === (tones.length === 1 ? "tone" : `tone${i + 1}`));
  const place = ({ pickups }: ToneSketch) => (pickups.length === 0 ? neckFirst.length : neckFirst.indexOf(pickups[0]!));
  return isNamed ? [...tones] : [...tones].sort((a, b) => place(a) - place(b));
}

export function padded(tones: ToneSketch[], least: number): ToneSketch[] {
  const missing: ToneSketch = { pot: undefined, cap: undefined, pickups: [] };
  return [...tones, ...Array.from({ length: Math.max(0, least - tones.length) }, () => missing)];
}
