import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Drive } from "../drive.ts";
import { Guard } from "../guard.ts";
import type { Family } from "./families.ts";
import { planOf } from "./plan-of.ts";
import { type Score, soundsOf, trebleLossOf } from "./score.ts";
import type { Stock } from "./stock.ts";
import type { Variant } from "./variants.ts";

/** What drives a guard's coils where they sit. */
export type DriveOf = (guard: Guard) => Drive;

/** A guard of the drawer that was heard. */
export interface HeardGuard {
  readonly plan: PlanInput;
  readonly build: Build;
  readonly score: Score;
  /** How many parts it takes. */
  readonly parts: number;
}

/** Hears guards, and remembers what one shares with the next. */
export class Hearing {
  heard = 0;
  readonly #driveOf: DriveOf;
  readonly #checkpoint: () => void;
  readonly #drives = new Map<string, Drive>();
  readonly #sounds = new Map<string, Omit<Score, "trebleLoss">>();

  constructor(driveOf: DriveOf, checkpoint: () => void) {
    this.#driveOf = driveOf;
    this.#checkpoint = checkpoint;
  }

  hear(family: Family, variant: Variant, stock: Stock): HeardGuard {
    this.#checkpoint();
    this.heard++;
    const plan = planOf(family, variant, stock);
    const build = readBuild({ presolder: 1, plan });
    const guard = new Guard(build);
    const drive = this.#driveFor(guard, plan);
    // With the volume at 10 a bleed is bridged by the wiper, and changes nothing.
    const { trebleBleed: _, ...unbled } = plan;
    const sounds = remembered(this.#sounds, JSON.stringify(unbled), () => soundsOf(guard, drive));
    const parts = Object.values(build.parts).filter(({ kind }) => kind !== "terminal").length;
    return { plan, build, score: { ...sounds, trebleLoss: trebleLossOf(guard, drive) }, parts };
  }

  #driveFor(guard: Guard, { layout, pickups }: PlanInput): Drive {
    return remembered(this.#drives, JSON.stringify([layout, pickups]), () => this.#driveOf(guard));
  }
}

function remembered<T>(known: Map<string, T>, key: string, make: () => T): T {
  const value = known.get(key) ?? make();
  known.set(key, value);
  return value;
}
