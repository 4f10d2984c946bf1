import { LAYOUT_NAMES, type LayoutName, layoutOf } from "../../../src/build-file/plans/layouts.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings, type Settings } from "../../../src/build-file/settings.ts";
import { loudnessLu } from "../../../src/choice/band-energies.ts";
import type { Drive } from "../../../src/choice/drive.ts";
import { heardDifference } from "../../../src/choice/ear/heard-difference.ts";
import { heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { energiesFor, Guard } from "../../../src/choice/guard.ts";
import { PresolderError } from "../../../src/errors.ts";
import { describeSetting } from "../../../src/response/labels/setting-describer.ts";
import { driveOf } from "./drive.ts";

/** A drawer as a heap of single parts; pickups by their catalogue type. */
export interface Heap {
  readonly pickups: readonly string[];
  readonly pots: readonly { readonly ohms: string; readonly pushPull: boolean }[];
  readonly caps: readonly string[];
  readonly resistors: readonly string[];
  readonly selectors: readonly string[];
  readonly smallSwitches: number;
}

export interface BruteGuard {
  /** The same for guards that differ in which of two parts alike is which. */
  readonly wiring: string;
  readonly values: string;
  readonly plan: PlanInput;
}

export interface BruteScore {
  readonly sounds: number;
  readonly humFree: number;
  readonly unevenness: number;
  readonly trebleLoss: number;
}

const SELECTOR: Readonly<Record<LayoutName, string | null>> = {
  "lever-5-two-tone": "lever-5",
  "lever-5-one-tone": "lever-5",
  "lever-3-two-tone": "lever-3",
  "lever-3-two-pickups": "lever-3",
  "toggle-3-one-volume": "toggle-3",
  "toggle-3-two-volumes": "toggle-3",
  "one-pickup": null,
};

const TWO_OF_THREE = [
  [["neck"], ["middle"]],
  [["neck"], ["bridge"]],
  [["middle"], ["bridge"]],
  [["neck", "middle"], ["bridge"]],
  [["neck", "bridge"], ["middle"]],
  [["neck"], ["middle", "bridge"]],
];
const TONES: Readonly<Record<LayoutName, string[][][]>> = {
  "lever-5-two-tone": TWO_OF_THREE,
  "lever-5-one-tone": [[], [[]]],
  "lever-3-two-tone": TWO_OF_THREE,
  "lever-3-two-pickups": [[], [[]]],
  "toggle-3-one-volume": [[], [[]], [["neck"], ["bridge"]]],
  "toggle-3-two-volumes": [[], [[]], [["neck"], ["bridge"]]],
  "one-pickup": [[], [[]]],
};

function orders(count: number, length: number): number[][] {
  if (length === 0) return [[]];
  return orders(count, length - 1).flatMap((row) =>
    Array.from({ length: count }, (_, i) => i).flatMap((i) => (row.includes(i) ? [] : [[...row, i]])),
  );
}

type Change = { readonly field: string; readonly poles: number; readonly value: Record<string, unknown> };

function changesFor(places: readonly string[], types: readonly string[], hasSelector: boolean): Change[] {
  const changes: Change[] = [];
  for (const [index, pickup] of places.entries()) {
    if (types[index]!.includes("humbucker")) {
      for (const keeps of ["slug", "screw"]) changes.push({ field: "split", poles: 1, value: { pickup, keeps } });
      changes.push({ field: "seriesParallel", poles: 2, value: { pickup } });
    }
    if (places.length === 1) continue;
    changes.push({ field: "phase", poles: 2, value: { pickup } });
    for (const other of places)
      if (other !== pickup) changes.push({ field: "seriesLink", poles: 2, value: { pickups: [pickup, other] } });
    if (hasSelector) changes.push({ field: "alwaysOn", poles: 1, value: { pickup } });
  }
  return changes;
}

/** What each switch does: nothing, one thing, or two things of one pole; every switch by itself. */
function switchings(changes: readonly Change[], switches: readonly string[]): (readonly Change[])[][] {
  const pairs = changes.flatMap((a, i) =>
    changes.slice(i + 1).flatMap((b) => (a.poles + b.poles <= 2 ? [[a, b]] : [])),
  );
  const choices: (readonly Change[])[] = [[], ...changes.map((change) => [change]), ...pairs];
  return switches.reduce<(readonly Change[])[][]>(
    (rows) => rows.flatMap((row) => choices.map((choice) => [...row, choice])),
    [[]],
  );
}

/** Two ways to work the same coils, phases of one pickup twice, two links: the plan has no place for them. */
function clash(all: readonly Change[]): boolean {
  const claims = all.map(({ field, value }) =>
    field === "seriesLink" || field === "alwaysOn" ? field : `${field === "phase" ? "phase" : "coils"} ${value.pickup}`,
  );
  return new Set(claims).size < claims.length;
}

function planWith(base: PlanInput, row: readonly (readonly Change[])[], switches: readonly string[]): PlanInput {
  const plan: Record<string, unknown> = { ...base };
  const many: Record<string, unknown[]> = {
    split: [...((base.split as unknown[]) ?? [])],
    seriesParallel: [],
    phase: [],
  };
  for (const [index, changes] of row.entries()) {
    const by = switches[index]!.startsWith("small") ? { switch: switches[index]! } : switches[index]!;
    for (const { field, value } of changes) {
      if (field in many) many[field]!.push({ ...value, by });
      else plan[field] = { ...value, by };
    }
  }
  return { ...plan, ...many } as PlanInput;
}

function readable(plan: PlanInput): boolean {
  try {
    readBuild({ presolder: 1, plan });
    return true;
  } catch (error) {
    if (error instanceof PresolderError) return false;
    throw error;
  }
}

/** Every plan that the heap allows, part by part, those that cannot be wired tried and left out; guards alike once. */
export function everyGuard(heap: Heap): BruteGuard[] {
  const found = new Map<string, BruteGuard>();
  const canBeWired = new Map<string, boolean>();
  for (const layout of LAYOUT_NAMES) {
    const { pickups: places, volumes } = layoutOf(layout);
    const selector = SELECTOR[layout];
    if (selector !== null && !heap.selectors.includes(selector)) continue;
    for (const placed of orders(heap.pickups.length, places.length)) {
      const types = placed.map((index) => heap.pickups[index]!);
      const changes = changesFor(places, types, selector !== null);
      for (const tones of TONES[layout]) {
        for (const potRow of orders(heap.pots.length, volumes + tones.length)) {
          const names = [
            ...(volumes === 1 ? ["volume"] : ["volume1", "volume2"]),
            ...(tones.length === 1 ? ["tone"] : tones.map((_, i) => `tone${i + 1}`)),
          ];
          const onPots = names.filter((_, i) => heap.pots[potRow[i]!]!.pushPull);
          const small = Array.from({ length: heap.smallSwitches }, (_, i) => `small${i + 1}`);
          const switches = [...onPots, ...small];
          const capRows = [
            ...orders(heap.caps.length, tones.length),
            ...(tones.length === 2 ? orders(heap.caps.length, 1) : []),
          ].filter((row) => row.every((cap) => !heap.caps[cap]!.endsWith("p")));
          for (const capRow of capRows)
            for (const bleed of bleedsOf(heap, capRow, volumes))
              for (const auto of automaticOf(layout, places, types))
                for (const row of switchings(changes, switches)) {
                  const used = row.filter((each) => each.length > 0);
                  if (used.length > 3 || clash([...used.flat(), ...auto])) continue;
                  const ohms = potRow.map((pot) => heap.pots[pot]!.ohms);
                  const base = basePlan({ layout, places, types, tones, ohms, volumes, capRow, heap, bleed, auto });
                  const plan = planWith(base, row, switches);
                  const sets = used.map((each) =>
                    each.map(({ field, value }) => JSON.stringify([field, value])).sort(),
                  );
                  const wiring = JSON.stringify([layout, types, sets.map(String).sort(), auto]);
                  const caps = capRow.map((cap) => heap.caps[cap]);
                  const values = JSON.stringify([tones, ohms, caps, bleed]);
                  if (found.has(wiring + values)) continue;
                  const key = JSON.stringify([wiring, tones]);
                  if (!canBeWired.has(key)) canBeWired.set(key, readable(plan));
                  if (canBeWired.get(key)) found.set(wiring + values, { wiring, values, plan });
                }
        }
      }
    }
  }
  return [...found.values()];
}

function bleedsOf({ caps, resistors }: Heap, capRow: readonly number[], volumes: number): (object | undefined)[] {
  const left = caps.filter((_, index) => !capRow.includes(index));
  const bleeds: (object | undefined)[] = [undefined];
  for (const capacitance of new Set(left.filter((cap) => cap.endsWith("p") || cap === "1n"))) {
    if (left.filter((cap) => cap === capacitance).length < volumes) continue;
    bleeds.push({ capacitance });
    for (const ohms of new Set(resistors)) {
      if (resistors.filter((each) => each === ohms).length < volumes) continue;
      bleeds.push({ capacitance, parallel: ohms }, { capacitance, series: ohms });
    }
  }
  return bleeds;
}

function automaticOf(layout: LayoutName, places: readonly string[], types: readonly string[]): Change[][] {
  if (!layout.startsWith("lever-5")) return [[]];
  let sets: Change[][] = [[]];
  for (const [pickup, position] of [
    ["bridge", 2],
    ["neck", 4],
  ] as const) {
    if (!types[places.indexOf(pickup)]!.includes("humbucker")) continue;
    const own = ["slug", "screw"].map((keeps) => ({
      field: "split",
      poles: 0,
      value: { pickup, keeps, by: { position } },
    }));
    sets = sets.flatMap((set) => [set, ...own.map((each) => [...set, each])]);
  }
  return sets;
}

interface Base {
  readonly layout: LayoutName;
  readonly places: readonly string[];
  readonly types: readonly string[];
  readonly tones: readonly string[][];
  readonly ohms: readonly string[];
  readonly volumes: number;
  readonly capRow: readonly number[];
  readonly heap: Heap;
  readonly bleed: object | undefined;
  readonly auto: readonly Change[];
}

function basePlan({ layout, places, types, tones, ohms, volumes, capRow, heap, bleed, auto }: Base): PlanInput {
  const pot = (index: number) => ({ pot: ohms[index]!, taper: "audio" as const });
  const isShared = tones.length === 2 && capRow.length === 1;
  return {
    layout,
    pickups: Object.fromEntries(places.map((place, index) => [place, types[index]!])),
    ...(volumes === 1
      ? { volume: pot(0) }
      : {
          volumes: [
            { ...pot(0), pickups: ["neck"] },
            { ...pot(1), pickups: ["bridge"] },
          ],
        }),
    tones: tones.map((pickups, index) => ({
      ...pot(volumes + index),
      ...(isShared ? {} : { cap: heap.caps[capRow[index]!]! }),
      ...(pickups.length > 0 ? { pickups: [...pickups] } : {}),
    })),
    ...(isShared ? { sharedCap: heap.caps[capRow[0]!]! } : {}),
    ...(bleed ? { trebleBleed: bleed as never } : {}),
    split: auto.map(({ value }) => value) as never,
  };
}

function everySetting(build: Build): Settings[] {
  const controls = new Controls(build);
  const raw = controls.switches.reduce<Record<string, number>[]>(
    (rows, { name, table }) => rows.flatMap((row) => table.positions.map((_, i) => ({ ...row, [name]: i + 1 }))),
    [{}],
  );
  return raw.map((each) => parseSettings(controls, each));
}

const largestOf = (a: Float64Array, b: Float64Array) =>
  Math.abs(heardDifference(heardSound(a), heardSound(b)).largest.db);

/** Which of the sounds pass for one: two groups are joined while any two of all pairs may be, the nearest pair first. */
function groupsOf(energies: readonly Float64Array[]): number[][] {
  const distance = energies.map((a) => energies.map((b) => largestOf(a, b)));
  const groups = energies.map((_, index) => [index]);
  for (;;) {
    let best: [number, number] | undefined;
    let least = 1.25;
    for (let i = 0; i < groups.length; i++)
      for (let j = i + 1; j < groups.length; j++) {
        const between = groups[i]!.flatMap((a) => groups[j]!.map((b) => distance[a]![b]!));
        if (Math.max(...between) >= 1.25 || Math.min(...between) >= least) continue;
        least = Math.min(...between);
        best = [i, j];
      }
    if (!best) return groups;
    groups[best[0]]!.push(...groups.splice(best[1], 1)[0]!);
  }
}

const tenths = (value: number) => Math.round(value * 10) / 10;

/** The figures of a guard, setting by setting. */
export function bruteScore(plan: PlanInput, drives: Map<string, Drive>): BruteScore {
  const build = readBuild({ presolder: 1, plan });
  const guard = new Guard(build);
  const placed = JSON.stringify([plan.layout, plan.pickups]);
  const drive = drives.get(placed) ?? driveOf(guard);
  drives.set(placed, drive);
  const tonePots = guard.controls.potsWithRole("tone");
  const cells = everySetting(build).flatMap((settings) => {
    const { label, hum } = describeSetting(build, settings);
    const isDown = guard.controls.switches.every(
      ({ name }) => name === guard.controls.main?.name || settings.switches[name] === 1,
    );
    if (label === "silent") return [];
    const at = (dial: number) => ({
      ...settings,
      dials: { ...settings.dials, ...Object.fromEntries(tonePots.map((pot) => [pot, dial])) },
    });
    return (tonePots.length > 0 ? [10, 0] : [10]).map((dial) => ({
      energies: energiesFor(guard.transfers(at(dial)), drive),
      isHumFree: dial === 10 && hum === "cancelling",
      isPlain: dial === 10 && isDown,
    }));
  });
  const groups = groupsOf(cells.map(({ energies }) => energies));
  const levels = cells.filter(({ isPlain }) => isPlain).map(({ energies }) => loudnessLu(energies));
  const down = parseSettings(guard.controls, { volume: 5 });
  const [full, half] = [guard.controls.atRest, down].map((each) => energiesFor(guard.transfers(each), drive));
  return {
    sounds: groups.length,
    humFree: groups.filter((group) => group.some((cell) => cells[cell]!.isHumFree)).length,
    unevenness: levels.length < 2 ? 0 : tenths(Math.max(...levels) - Math.min(...levels)),
    trebleLoss: tenths(largestOf(full!, half!)),
  };
}
