import type { LeadsRequest } from "../../../src/bench/leads/leads-request.ts";
import { type BenchPickup, everyPickup, measured } from "./pickup-on-the-bench.ts";

/** Two readings of ohms that a hobby meter, wandering by 1 %, may show for one thing. */
const ALIKE = 0.06;

const isOhms = (ohms: number | null): ohms is number => ohms !== null && ohms > 3;

function sortsOf({ readings, metal, kicks, compass }: LeadsRequest): string {
  const all = [...readings, ...(metal === "none" ? [] : metal)];
  const shown = all.map(({ ohms }) => (ohms === null ? "open" : isOhms(ohms) ? "ohms" : "joint"));
  return [shown, kicks.map(({ kick }) => kick), compass.map(({ draws }) => draws)].join(" | ");
}

const ohmsOf = ({ readings, metal }: LeadsRequest) =>
  [...readings, ...(metal === "none" ? [] : metal)].map(({ ohms }) => ohms).filter(isOhms);

/** Whether coils of some resistance would make another pickup read the same. */
function canRead(other: BenchPickup, readings: readonly number[]): boolean {
  const some = new Set(readings.flatMap((a) => [a, a / 2, 2 * a, ...readings.map((b) => a - b)]));
  // Side by side: one of two known coils from both together.
  for (const a of readings) for (const b of readings) if (a < b) some.add((a * b) / (b - a));
  const coils = [...some].filter((ohms) => ohms > 100);
  return coils.some((first) =>
    (other.coils === 1 ? [first] : coils).some((second) => {
      const own = ohmsOf(measured(other, [first, second]));
      return own.every((ohms, index) => Math.abs(Math.log(ohms / readings[index]!)) < ALIKE);
    }),
  );
}

/** Pickups by what a meter, taps and a compass show of them, ohms left open. */
export class Universe {
  readonly pickups: readonly BenchPickup[];
  readonly #bySorts = new Map<string, BenchPickup[]>();

  constructor(coils: number, leadCount: number) {
    this.pickups = everyPickup(coils, leadCount);
    for (const pickup of this.pickups) {
      const key = sortsOf(measured(pickup, [4000, 5500]));
      this.#bySorts.set(key, [...(this.#bySorts.get(key) ?? []), pickup]);
    }
  }

  /** Whether no other pickup with so many leads can read as this one does, whatever its coils. */
  isIdentifiable(pickup: BenchPickup, ohms: readonly number[]): boolean {
    const noiseless = measured(pickup, ohms);
    const alike = this.#bySorts.get(sortsOf(noiseless)) ?? [];
    return !alike.some((other) => other !== pickup && canRead(other, ohmsOf(noiseless)));
  }
}
