import fc from "fast-check";
import { expect, test } from "vitest";
import { PICKUP_TYPE_NAMES } from "../../src/build-file/catalogue/pickup-types.ts";
import { lugsOfPart } from "../../src/build-file/lugs.ts";
import type { PlanInput } from "../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import type { BuildInput } from "../../src/build-file/schema.ts";
import { swapPickup } from "../../src/build-file/swap/swap-pickup.ts";
import { removePart } from "../../src/page/describe/remove-part.ts";
import type { Placed } from "../../src/page/drawing/arrange.ts";
import { movedPart, turnedPart } from "../../src/page/drawing/hand/place-edits.ts";
import { colouredWire, withChangedWire } from "../../src/page/drawing/hand/wire-edits.ts";
import { changedPlan, planOf } from "../../src/page/engine/plan-reader.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import { createAppStore } from "../../src/page/state/app-state.ts";
import { Editor } from "../../src/page/state/editor.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { effort } from "../effort.ts";
import { presetGuard } from "../fixtures/harness.ts";

type Kind = "plan" | "swap" | "wire" | "cut" | "colour" | "move" | "remove" | "undo" | "redo";
type Step = readonly [kind: Kind, number, number];

const step: fc.Arbitrary<Step> = fc.tuple(
  fc.constantFrom("plan", "plan", "swap", "wire", "cut", "colour", "move", "remove", "undo", "undo", "redo"),
  fc.nat(),
  fc.nat(),
);

/** The guard on the bench, changed as the page changes it; undo and redo are checked against what was there. */
class Walk {
  readonly store = createAppStore();
  readonly #editor: Editor;
  readonly #past: string[] = [];
  #at = -1;
  #hint: PlanInput | undefined;

  constructor() {
    this.#editor = new Editor(this.store, { read: async (source) => readSource(source) });
  }

  get source(): BuildSource {
    return this.store.state.source!;
  }

  async open(guard: BuildInput): Promise<void> {
    await this.#editor.open(guard as unknown as BuildSource);
    this.#note();
  }

  #note(): void {
    this.#past.splice(this.#at + 1, this.#past.length, JSON.stringify(this.source));
    this.#at += 1;
  }

  async #change(change: (source: BuildSource) => BuildSource): Promise<void> {
    const before = this.source;
    await this.#editor.rework(change);
    if (this.source !== before) this.#note();
  }

  async take([kind, a, b]: Step): Promise<void> {
    if (kind === "undo" || kind === "redo") {
      const next = this.#at + (kind === "undo" ? -1 : 1);
      if (next < 0 || next >= this.#past.length) return;
      await this.#editor[kind]();
      this.#at = next;
      expect(JSON.stringify(this.source)).toBe(this.#past[next]);
      return;
    }
    if (kind === "plan") await this.#plan(a, b);
    if (kind === "swap") await this.#swap(a, b);
    if (kind === "wire") await this.#wire(a, b);
    if (kind === "cut")
      await this.#change((source) => ({
        ...source,
        wires: source.wires.filter((_, i) => i !== a % source.wires.length),
      }));
    if (kind === "colour") await this.#colour(a, b);
    if (kind === "move") await this.#move(a, b);
    if (kind === "remove") await this.#remove(a);
  }

  async #colour(a: number, b: number): Promise<void> {
    const colour = ["white", "black", ""][b % 3]!;
    await this.#change((source) => {
      const wire = source.wires[a % source.wires.length];
      return wire ? withChangedWire(source, wire, colouredWire(wire, colour)) : source;
    });
  }

  async #move(a: number, b: number): Promise<void> {
    const names = Object.keys(this.source.parts);
    const placed = { name: names[a % names.length]!, centre: { x: b % 500, y: b % 300 } } as Placed;
    const by = { x: (b % 70) - 35, y: (b % 30) - 15 };
    await this.#change((source) => (b % 2 ? turnedPart(source, placed, b % 24) : movedPart(source, placed, by)));
  }

  async #plan(a: number, b: number): Promise<void> {
    const answer = planOf(this.source, this.#hint);
    if (answer.plan === null) return;
    const field = answer.fields[a % answer.fields.length]!;
    const values =
      field.kind === "quantity"
        ? ["330k", "470k"]
        : (field.kind === "ticks" ? field.ticks : field.choices)
            .filter(({ reason }) => reason === undefined)
            .map(({ value }) => value);
    if (values.length === 0) return;
    const value = field.kind === "quantity" && field.dimension === "capacitance" ? "33n" : values[b % values.length]!;
    const change = changedPlan({ source: this.source, plan: answer.plan, field: field.id, value });
    expect(change, `${field.id} ${value}`).not.toHaveProperty("refusal");
    if (!("source" in change)) return;
    this.#hint = change.plan;
    await this.#change(() => change.source);
  }

  async #swap(a: number, b: number): Promise<void> {
    const pickups = Object.keys(this.source.parts).filter((name) => this.source.parts[name]!.kind === "pickup");
    if (pickups.length === 0) return;
    const type = PICKUP_TYPE_NAMES[b % PICKUP_TYPE_NAMES.length]!;
    await this.#change((source) => swapPickup(source as never, pickups[a % pickups.length]!, { type }));
  }

  async #wire(a: number, b: number): Promise<void> {
    const { build } = this.store.state.reading!;
    const lugs = Object.entries(build.parts).flatMap(([name, part]) => lugsOfPart(name, part).map((lug) => lug.name));
    const [from, to] = [lugs[a % lugs.length]!, lugs[b % lugs.length]!];
    if (from !== to) await this.#change((source) => ({ ...source, wires: [...source.wires, [from, to]] }));
  }

  async #remove(a: number): Promise<void> {
    const loose = Object.keys(this.source.parts).filter((name) =>
      ["cap", "resistor", "terminal"].includes(this.source.parts[name]!.kind),
    );
    if (loose.length > 0) await this.#change((source) => removePart(source, loose[a % loose.length]!));
  }
}

test("no walk of plan changes, pickup swaps, hand edits and undos leaves a guard unreadable or shows an older one", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...PLAN_PRESETS.map(({ id }) => id)),
      fc.array(step, { minLength: effort(15, 60), maxLength: effort(25, 100) }),
      async (id, steps) => {
        const walk = new Walk();
        await walk.open(presetGuard(id));
        for (const each of steps) {
          await walk.take(each);
          const { faults, reading, source } = walk.store.state;
          expect(faults, JSON.stringify(each)).toEqual([]);
          expect(reading?.source).toBe(source);
        }
      },
    ),
    { numRuns: effort(6, 20) },
  );
});
