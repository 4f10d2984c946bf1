import type { Build, Part } from "../../build-file/schema.ts";
import { type PartSlots, partSlots, type Stand } from "./part-slots.ts";
import { RIG, type Rig } from "./rig-unknowns.ts";
import type { Unknown } from "./unknowns.ts";

/** All unknowns of a guard and its rig, by part. */
export class Unknowns {
  readonly all: readonly Unknown[];
  readonly rig: Rig;
  readonly #byPart = new Map<string, number[]>();

  constructor(all: readonly Unknown[], rig: Rig) {
    this.all = all;
    this.rig = rig;
    for (const [index, { part }] of all.entries()) this.#byPart.set(part, [...(this.#byPart.get(part) ?? []), index]);
  }

  of(part: string): readonly number[] {
    return this.#byPart.get(part) ?? [];
  }

  indexOf(part: string, field: string): number {
    return this.of(part).find((index) => this.all[index]!.field === field) ?? -1;
  }

  with(more: readonly Unknown[]): Unknowns {
    return more.length === 0 ? this : new Unknowns([...this.all, ...more], this.rig);
  }
}

/** Where every unknown stands, and what all parts' elements are there. */
export class Point {
  readonly unknowns: Unknowns;
  readonly values: Float64Array;
  readonly #known = new Map<Part | typeof RIG, Map<string, PartSlots>>();

  constructor(unknowns: Unknowns, values = new Float64Array(unknowns.all.length)) {
    this.unknowns = unknowns;
    this.values = values;
  }

  /** A part's slots; the same part is worked out once, whatever build it stands in. */
  slotsOf(build: Build, name: string, dial: number): PartSlots {
    const part = name === RIG ? RIG : build.parts[name]!;
    const known = this.#known.get(part) ?? new Map<string, PartSlots>();
    this.#known.set(part, known);
    const key = part !== RIG && part.kind === "pot" ? `${name} ${dial}` : name;
    const found = known.get(key);
    if (found) return found;
    const made = part === RIG ? this.#rigSlots() : partSlots(part, dial, this.#stands(name));
    known.set(key, made);
    return made;
  }

  at(part: string, field: string): number {
    const index = this.unknowns.indexOf(part, field);
    return index < 0 ? 0 : this.values[index]!;
  }

  #stands(part: string): Stand[] {
    return this.unknowns.of(part).map((index) => ({
      unknown: this.unknowns.all[index]!,
      index,
      value: this.values[index]!,
    }));
  }

  #rigSlots(): PartSlots {
    const { inputOhms, inputFarads } = this.unknowns.rig;
    const values = [
      inputOhms * Math.exp(this.at(RIG, "input.resistance")),
      inputFarads * Math.exp(this.at(RIG, "input.capacitance")),
    ];
    const slopes = ["input.resistance", "input.capacitance"].map((field, slot) => ({
      unknown: this.unknowns.indexOf(RIG, field),
      slot,
      slope: values[slot]!,
    }));
    return { values, slopes };
  }
}
