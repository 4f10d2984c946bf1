import type { Plan, Where } from "../plans/plan-schema.ts";
import type { Guard } from "./guard.ts";
import { twoWaySwitches } from "./neighbours.ts";
import { keptCoil } from "./reading/coils.ts";
import { type Option, planNameOfSwitch, type Sketch, type SwitchAt } from "./sketch.ts";

/** The first reading's parts put to the purposes that another plan of the same layout has for them; undefined for another layout. */
export function asHinted(guard: Guard, first: Sketch, hint: Plan): Sketch | undefined {
  if (hint.layout !== first.layout || hint.tones.length !== first.tones.length) return undefined;
  const own = twoWaySwitches(guard, first).filter(({ onShaft }) => !onShaft);
  const pots = new Map<string, string | undefined>([
    ...first.volumes.map(({ pot }, i) => [first.volumes.length === 1 ? "volume" : `volume${i + 1}`, pot] as const),
    ...first.tones.map(({ pot }, i) => [first.tones.length === 1 ? "tone" : `tone${i + 1}`, pot] as const),
  ]);
  const at = (where: Where): SwitchAt | undefined => {
    if (typeof where !== "string") return own.find(({ part }) => planNameOfSwitch(part) === where.switch) ?? own[0];
    const pot = pots.get(where);
    return pot === undefined ? undefined : { part: pot, onShaft: true };
  };
  const known = (pickup: string) => pickup in first.pickups;
  const placed = (kind: "seriesParallel" | "phase" | "alwaysOn", option: { pickup: string; by: Where }): Option[] => {
    const place = at(option.by);
    return place && known(option.pickup) ? [{ kind, pickup: option.pickup, at: place }] : [];
  };
  const splits = hint.split.flatMap(({ pickup, by }): Option[] => {
    if (!known(pickup)) return [];
    const keeps = keptCoil(guard, first.pickups[pickup]!);
    if (typeof by === "object" && "position" in by) return [{ kind: "automatic", pickup, keeps }];
    const place = at(by);
    return place ? [{ kind: "split", pickup, keeps, at: place }] : [];
  });
  const link = hint.seriesLink;
  const linkAt = link && at(link.by);
  const options = [
    ...splits,
    ...hint.seriesParallel.flatMap((option) => placed("seriesParallel", option)),
    ...hint.phase.flatMap((option) => placed("phase", option)),
    ...(link && linkAt && link.pickups.every(known)
      ? [{ kind: "seriesLink" as const, pickups: link.pickups, at: linkAt }]
      : []),
    ...(hint.alwaysOn ? placed("alwaysOn", hint.alwaysOn) : []),
  ];
  const all = Object.keys(first.pickups);
  const tones = first.tones.map((tone, i) => {
    const pickups = (hint.tones[i]!.pickups ?? []).filter(known);
    return { ...tone, pickups: pickups.length === all.length ? [] : all.filter((name) => pickups.includes(name)) };
  });
  const isNamed = ({ part }: Sketch["resistors"][number]) => hint.resistors.length > 0 && /^resistor\d?$/.test(part);
  const likely = [...first.resistors].sort((a, b) => Number(isNamed(b)) - Number(isNamed(a)));
  const resistors = likely.slice(0, hint.resistors.length).map(({ part, across }, i) => {
    const place = hint.resistors[i]?.across ?? "";
    const pot = pots.get(place);
    return { part, across: known(place) ? { pickup: place } : pot === undefined ? across : { pot } };
  });
  const bleed = hint.trebleBleed && first.bleed;
  return { ...first, options, tones, toneFeed: hint.toneFeed, independent: hint.independentVolumes, resistors, bleed };
}
