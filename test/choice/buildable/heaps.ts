import { pickupType } from "../../../src/build-file/catalogue/pickup-types.ts";
import { drawerSchema } from "../../../src/drawer/drawer-schema.ts";
import { type Piece, piecesOf } from "../../../src/drawer/pieces.ts";
import { Random } from "../../random.ts";
import { everyGuard, type Heap } from "./brute-force.ts";

export function pickupPart(name: string) {
  const { coils, conductors, coupling, metal } = pickupType(name)!;
  const said = Object.entries({ conductors, coupling, metal }).filter(([, value]) => value !== undefined);
  return { kind: "pickup" as const, type: name, coils: { ...coils }, ...Object.fromEntries(said) };
}

/** The heap as a drawer has it. */
export function piecesOfHeap(heap: Heap): Piece[] {
  const items = [
    ...heap.pickups.map((type) => ({ part: pickupPart(type) })),
    ...heap.pots.map(({ ohms, pushPull }) => ({
      part: {
        kind: "pot" as const,
        resistance: ohms,
        taper: "audio" as const,
        ...(pushPull ? { drives: "dpdt" as const } : {}),
      },
    })),
    ...heap.caps.map((capacitance) => ({ part: { kind: "cap" as const, capacitance } })),
    ...heap.resistors.map((resistance) => ({ part: { kind: "resistor" as const, resistance } })),
    ...heap.selectors.map((type) => ({ part: { kind: "switch" as const, type: type as "lever-5" } })),
    ...Array.from({ length: heap.smallSwitches }, () => ({ part: { kind: "switch" as const, type: "dpdt" as const } })),
  ];
  return piecesOf(drawerSchema.parse({ items }), 10);
}

const PICKUPS = ["single-vintage", "single-vintage-rwrp", "humbucker-medium", "p90", "single-hot"];

function anyHeap(random: Random): Heap {
  const some = <T>(most: number, make: () => T, least = 0) =>
    Array.from({ length: least + random.below(most - least + 1) }, make);
  return {
    pickups: some(3, () => random.pick(PICKUPS), 1),
    pots: some(3, () => ({ ohms: random.pick(["250k", "500k"]), pushPull: random.chance(0.3) }), 1),
    caps: some(2, () => random.pick(["22n", "47n", "1n", "680p"])),
    resistors: some(1, () => "150k"),
    selectors: some(2, () => random.pick(["lever-5", "lever-3", "toggle-3"])),
    smallSwitches: random.chance(0.2) ? 1 : 0,
  };
}

/** Small drawers, each of at least one guard and of no more than can be gone through one by one. */
export function smallHeaps(count: number): Heap[] {
  const random = new Random(20);
  const heaps: Heap[] = [];
  while (heaps.length < count) {
    const heap = anyHeap(random);
    if (heap.pickups.length > 2 && heap.smallSwitches + heap.pots.filter(({ pushPull }) => pushPull).length > 1)
      continue;
    const guards = everyGuard(heap).length;
    if (guards >= 2 && guards <= 250) heaps.push(heap);
  }
  return heaps;
}

/** A drawer of more guards than are heard in a minute. */
export const LARGE_DRAWER = {
  items: [
    ...PICKUPS.map((name) => ({ part: pickupPart(name), count: 2 })),
    ...["250k", "500k"].map((resistance) => ({ part: { kind: "pot" as const, resistance, drives: "dpdt" }, count: 4 })),
    ...["10n", "22n", "47n", "680p"].map((capacitance) => ({ part: { kind: "cap" as const, capacitance }, count: 2 })),
    ...["lever-5", "toggle-3"].map((type) => ({ part: { kind: "switch" as const, type } })),
    { part: { kind: "resistor" as const, resistance: "150k" } },
  ],
};
