import fc from "fast-check";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../../src/build-file/sweep.ts";
import { type Comparison, compare, type Side } from "../../../src/choice/compare/compare.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { pluckedDrive } from "../../../src/server/jobs/sound/plucked-drive.ts";
import { readScenario, scenarioFiles } from "../../scenarios/scenarios.ts";

export interface Compared {
  readonly title: string;
  readonly sides: readonly [Side, Side];
  readonly told: Comparison;
}

/** Two guards over a sweep, every band alike for the plain figures, the usual phrase for the weighed. */
export function compared(title: string, builds: readonly Build[], sweep?: RawSweep, settings?: RawSettings): Compared {
  const sides = builds.map((build): Side => {
    const guard = new Guard(build);
    return {
      guard,
      drive: flatDrive(),
      played: pluckedDrive(guard),
      settings: expandSweep(guard.controls, sweep, settings),
    };
  }) as [Side, Side];
  return { title, sides, told: compare(...sides, null) };
}

/** One guard in two settings. */
export function twoSettings(build: Build, settings: readonly [RawSettings, RawSettings]): Compared {
  const guard = new Guard(build);
  const sides = settings.map((raw) => ({
    guard,
    drive: flatDrive(),
    played: pluckedDrive(guard),
    settings: [parseSettings(guard.controls, raw)],
  })) as unknown as [Side, Side];
  return { title: JSON.stringify(settings), sides, told: compare(...sides, null) };
}

/** Every example that has something to be compared with, over its own sweep. */
export const scenarioComparisons = (): Compared[] =>
  scenarioFiles.flatMap((file) => {
    const { build, compareWith, sweep, settings, id } = readScenario(file);
    return compareWith ? [compared(id, [build, compareWith].map(readBuild), sweep as RawSweep, settings)] : [];
  });

const PLAN = {
  layout: "lever-5-two-tone",
  pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
  volume: "250k",
  tones: [
    { pot: "250k", cap: "22n", pickups: ["neck"] },
    { pot: "250k", cap: "22n", pickups: ["bridge"] },
  ],
} satisfies PlanInput;

export const plain = (more: Partial<PlanInput> = {}, rest: object = {}) =>
  readBuild({ presolder: 1, plan: { ...PLAN, ...more }, cable: { length: "3m", capacitance: "100p" }, ...rest });

const withCap = (cap: string) => plain({ tones: PLAN.tones.map((tone) => ({ ...tone, cap })) });

/** One change each, what the answer has to name, and what is swept. */
export const CHANGES: readonly [what: string, names: RegExp, change: () => Build, sweep: RawSweep][] = [
  ["a cap", /^33 nF instead of 22 nF as tone cap 1 and tone cap 2 /, () => withCap("33n"), { tone: [0, 3, 10] }],
  [
    "a cap a hundred times as large",
    /^2\.2 µF instead of 22 nF as /,
    () => withCap("2.2u"),
    { lever: [1, 3, 5], tone: [0, 10] },
  ],
  ["a volume pot", /^1 MΩ instead of 250 kΩ at the volume /, () => plain({ volume: "1M" }), { lever: [1, 2, 3, 4, 5] }],
  [
    "a volume pot a little off",
    /^255 kΩ instead of 250 kΩ at the volume /,
    () => plain({ volume: "255k" }),
    { lever: [1, 2, 3, 4, 5] },
  ],
  [
    "a taper",
    /^A linear taper instead of audio at the volume /,
    () => plain({ volume: { pot: "250k", taper: "linear" } }),
    { volume: [10, 5, 2] },
  ],
  [
    "a pickup",
    /^Hot wind instead of medium wind at the bridge humbucker /,
    () => plain({ pickups: { ...PLAN.pickups, bridge: "humbucker-hot" } }),
    { lever: [1, 2, 3, 4, 5] },
  ],
  [
    "a pickup's metal",
    /^Other metal at the bridge humbucker /,
    () => {
      const { bridge, ...parts } = plain().parts;
      if (bridge?.kind !== "pickup") throw new Error("no bridge pickup");
      const { type: _, ...rest } = bridge;
      const coils = Object.fromEntries(
        Object.entries(bridge.coils).map(([name, coil]) => [name, { ...coil, shielding: [{ pole: 3000 }] }]),
      );
      return { ...plain(), parts: { ...parts, bridge: { ...rest, coils } } };
    },
    { lever: [1, 2, 3] },
  ],
  [
    "a treble bleed put in",
    /^An added 1 nF treble bleed cap /,
    () => plain({ trebleBleed: { capacitance: "1n" } }),
    { volume: [10, 7, 4] },
  ],
  [
    "a lead",
    /^A lead of 6 m \(900 pF\) instead of one of 3 m \(300 pF\) /,
    () => plain({}, { cable: { length: "6m", capacitance: "150p" } }),
    { lever: [1, 5] },
  ],
  [
    "an input",
    /^An input of 220 kΩ instead of 1 MΩ /,
    () => plain({}, { load: { resistance: "220k" } }),
    { lever: [1, 5] },
  ],
  [
    "a wire moved",
    /^Moving one wire at the lever and volume /,
    () => plain({ toneFeed: "after-volume" }),
    { volume: [10, 5], tone: [10, 5] },
  ],
  [
    "a cap and a pot",
    /^500 kΩ instead of 250 kΩ at the volume and 47 nF instead of 22 nF as /,
    () => plain({ volume: "500k", tones: PLAN.tones.map((tone) => ({ ...tone, cap: "47n" })) }),
    { lever: [1, 5], tone: [0, 10] },
  ],
];

export const changeComparisons = (): Compared[] =>
  CHANGES.map(([what, , change, sweep]) => compared(what, [plain(), change()], sweep));

const ohms = fc.constantFrom("100k", "220k", "300k", "500k", "1M");
const CAPS = ["3.3n", "10n", "33n", "47n", "100n"] as const;
const SWEEPS: readonly RawSweep[] = [
  { lever: [1, 2, 3, 4, 5] },
  { lever: [1, 5], tone: [10, 6, 0] },
  { lever: [3], volume: [10, 7, 3] },
  { tone1: [10, 2], tone2: [10, 5] },
];
const shown = (value: string) => value.replace(/([kMn])$/, (unit) => ` ${unit === "n" ? "nF" : `${unit}Ω`}`);

/** One to three values changed at once, and what the first sentence has to name of each where they are few. */
export const anyChange = fc
  .record({
    volume: fc.option(ohms),
    cap: fc.option(fc.constantFrom(...CAPS)),
    bridge: fc.option(fc.constantFrom("humbucker-hot", "humbucker-vintage")),
    bleed: fc.option(fc.constantFrom("470p", "1n")),
    metres: fc.option(fc.integer({ min: 4, max: 15 })),
    sweep: fc.constantFrom(...SWEEPS),
  })
  .filter(({ sweep: _, ...values }) => {
    const changed = Object.values(values).filter((value) => value !== null).length;
    return changed > 0 && changed <= 3;
  })
  .map(({ volume, cap, bridge, bleed, metres, sweep }) => {
    const more: Partial<PlanInput> = {
      ...(volume ? { volume } : {}),
      ...(cap ? { tones: PLAN.tones.map((tone) => ({ ...tone, cap })) } : {}),
      ...(bridge ? { pickups: { ...PLAN.pickups, bridge } } : {}),
      ...(bleed ? { trebleBleed: { capacitance: bleed } } : {}),
    };
    const cable = metres ? { cable: { length: `${metres}m`, capacitance: "100p" } } : {};
    const names = [
      ...(volume ? [`${shown(volume)} instead of 250 kΩ`] : []),
      ...(cap ? [`${shown(cap)} instead of 22 nF`] : []),
      ...(bridge ? ["instead of medium wind"] : []),
      ...(bleed ? ["added"] : []),
      ...(metres ? [`of ${metres} m`] : []),
    ];
    return { change: plain(more, cable), sweep, names };
  });
