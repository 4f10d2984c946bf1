import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import type { Build, Coil } from "../../../src/build-file/schema.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { hearTaps } from "../../../src/measure/taps/hear-taps.ts";
import { planTaps } from "../../../src/measure/taps/plan-taps.ts";
import type { TapDeparture } from "../../../src/measure/taps/tap-departure.ts";
import { tapMap } from "../../../src/measure/taps/tap-map.ts";
import { type TapTransfer, TapTransfers } from "../../../src/measure/taps/tap-transfers.ts";
import { type Random, seeded } from "../../bench/faults/blind-trials.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { type Hand, tappedTake } from "./tapped-guard.ts";

/** The detector asks for no more, and a simulation takes a quarter of the time. */
export const TRIAL_RATE_HZ = 8_000;
export const START_SECONDS = 1.5;

/** Guards of two pickups or more, and a switch. */
export const TAPPED_BUILDS = scenarioBuilds.filter(
  ({ name, build }) => name !== "came-back-wrong" && new Controls(build).main !== undefined && rowsOf(build).length > 1,
);

function rowsOf(build: Build): { pickup: string; coil: string; isHalf: boolean }[] {
  return Object.entries(build.parts).flatMap(([pickup, part]) => {
    if (part.kind !== "pickup") return [];
    const coils = Object.keys(part.coils);
    return coils.map((coil) => ({ pickup, coil, isHalf: coils.length > 1 }));
  });
}

/** What is wrong with a guard, and how the map should name it. */
export interface Hidden {
  readonly guard: Build;
  readonly names: (departures: readonly TapDeparture[]) => boolean;
  readonly words: string;
}

const turned = (coil: Coil): Coil => ({ ...coil, magnet: coil.magnet === "north" ? "south" : "north" });

export function withTurned(build: Build, pickup: string, coil: string | undefined): Build {
  const part = build.parts[pickup]!;
  if (part.kind !== "pickup") return build;
  const coils = Object.entries(part.coils).map(([name, spec]) => [
    name,
    coil === undefined || name === coil ? turned(spec) : spec,
  ]);
  // One coil's magnet turned over turns the coupling with it, which is told of the connection that adds up.
  return { ...build, parts: { ...build.parts, [pickup]: { ...part, coils: Object.fromEntries(coils) } } };
}

/** Whether the guard as it is does keep silent where the map says so: a shorted half takes others with it. */
function isTrue(build: Build, guard: Build, { settings, pickup }: TapDeparture): boolean {
  if (!settings) return false;
  const [drawn, real] = [build, guard].map((each) => new TapTransfers(each).in(settings)) as [
    TapTransfer[],
    TapTransfer[],
  ];
  const size = (all: TapTransfer[]) =>
    Math.hypot(
      ...all.filter((each) => pickup === undefined || each.pickup === pickup).flatMap(({ re, im }) => [re, im]),
    );
  return size(real) < 0.2 * size(drawn);
}

const only = (departures: readonly TapDeparture[], fits: (departure: TapDeparture) => boolean) =>
  departures.length === 1 && fits(departures[0]!);

const FAULTS: readonly ((build: Build, random: Random) => Hidden | undefined)[] = [
  (build, random) => {
    const pickups = [...new Set(rowsOf(build).map(({ pickup }) => pickup))];
    const pickup = pickups[Math.floor(random() * pickups.length)]!;
    if (pickups.length < 2) return undefined;
    // Of two pickups either may be called the one that is out of phase.
    const names = (found: readonly TapDeparture[]) =>
      only(found, (each) => each.kind === "reversed" && (each.pickup === pickup || pickups.length === 2));
    return { guard: withTurned(build, pickup, undefined), names, words: `${pickup} turned` };
  },
  (build, random) => {
    const halves = rowsOf(build).filter(({ isHalf }) => isHalf);
    if (halves.length === 0) return undefined;
    const { pickup, coil } = halves[Math.floor(random() * halves.length)]!;
    const guard = editBuild(build, [{ edit: "coil-shorted", part: pickup, coil }]);
    const names = (found: readonly TapDeparture[]) =>
      found.some((each) => ["dead", "faint"].includes(each.kind) && each.pickup === pickup && each.coil === coil) &&
      found.every(
        (each) => each.pickup === pickup || (["nothing", "silent"].includes(each.kind) && isTrue(build, guard, each)),
      );
    return { guard, names, words: `${pickup} ${coil} dead` };
  },
  (build) => {
    const { main } = new Controls(build);
    const old = build.parts[main!.part]!;
    const positions = main!.table.positions.map((groups) => groups.map((group) => [...group])).reverse();
    if (old.kind !== "switch") return undefined;
    const guard: Build = { ...build, parts: { ...build.parts, [main!.part]: { kind: "switch", positions } } };
    return { guard, names: (found) => only(found, ({ kind }) => kind === "exchanged"), words: "positions reversed" };
  },
];

const SOUND = (build: Build): Hidden => ({ guard: build, names: (found) => found.length === 0, words: "as drawn" });

export function heardOf(build: Build, guard: Build, hand: Hand) {
  const steps = planTaps(build);
  const rateHz = hand.rateHz ?? TRIAL_RATE_HZ;
  const take = tappedTake(guard, steps, { ...hand, rateHz });
  const recording = { path: "taps", sampleRateHz: rateHz, channels: [take] };
  return hearTaps(recording, steps, { by: "plan", start: START_SECONDS }, NO_CHECKPOINT);
}

/** One random guard with one hidden fault, or none, by a random hand; and what the map says of it. */
export function tapTrial(seed: number) {
  const random = seeded(seed);
  const { name, build } = TAPPED_BUILDS[Math.floor(random() * TAPPED_BUILDS.length)]!;
  const kind = Math.floor(random() * (FAULTS.length + 1));
  const hidden = FAULTS[kind]?.(build, random) ?? SOUND(build);
  const hand: Hand = {
    seed,
    noise: 10 ** (-5 + random()),
    hum: 10 ** (-3.5 + 1.3 * random()),
    peak: 0.1 + 0.8 * random(),
    isFlipped: random() < 0.5,
    tapsOn: () => 2 + Math.floor(random() * 3),
  };
  const heard = heardOf(build, hidden.guard, hand);
  const { departures } = tapMap(build, heard);
  const said = departures.map(({ message }) => message).join(" ") || "as drawn";
  return { heard, hidden, build, named: hidden.names(departures), words: `${name}, ${hidden.words}: ${said}` };
}
