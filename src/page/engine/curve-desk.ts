import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import type { Build } from "../../build-file/schema.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { InputFault } from "../../errors.ts";
import type { Family } from "../curves/family.ts";
import type { LivePath } from "../drawing/live-path.ts";
import type { FamilyAxis } from "../state/app-state.ts";
import { type BuildSource, readingOf } from "../state/reading.ts";
import { type LargestDifference, largestDifference, largestOfAll } from "./curve-difference.ts";
import { familyOf } from "./family-of.ts";
import { KnownGuard } from "./known-guard.ts";
import type { PlanAnswer, PlanChange, PlanStep } from "./plan-reader.ts";
import type { LongForm } from "./source-reader.ts";

/** What is shown of a guard in a setting; guards go by their numbers. */
export interface ViewRequest {
  readonly guard: number;
  readonly settings: RawSettings;
  readonly family: FamilyAxis;
  readonly other: number | undefined;
  /** Whether the drawing is shown, too. */
  readonly wantsPath: boolean;
  /** Of the live path that is shown already, which need not come again. */
  readonly shownShape: number | undefined;
}

/** Curves, words and the drawing's live path, all of one setting. */
export interface ViewAnswer {
  readonly label: string;
  readonly family: Family;
  /** Where it is wanted and another one than is shown. */
  readonly path: LivePath | undefined;
}

export type BuildRead = { readonly build: Build } | { readonly faults: readonly InputFault[] };

/** What needs the build file's schemas comes when it is first needed: the first guard is known without. */
const reader = () => import("./source-reader.ts");

/** Plans come when somebody asks for one. */
const planReader = () => import("./plan-reader.ts");

/** Reads guards, keeps those that the page shows, and works out their curves. */
export class CurveDesk {
  readonly #guards = new Map<number, KnownGuard>();

  /** Loads the code that reads build files, before the first one is to be read. */
  async prepare(): Promise<void> {
    await reader();
  }

  /** Reads a build file in the long form; it is known by the number from now on if it could be read. */
  async read(guard: number, source: BuildSource): Promise<BuildRead> {
    const { readSource } = await reader();
    const result = readSource(source);
    if ("faults" in result) return result;
    this.#guards.set(guard, new KnownGuard(result.reading));
    return { build: result.reading.build };
  }

  async longFormOf(input: unknown): Promise<LongForm> {
    return (await reader()).longFormOf(input);
  }

  /** The plan that a guard is wired by. @param hint of plans that are equally near the one to take */
  async planOf(source: BuildSource, hint: PlanInput | undefined): Promise<PlanAnswer> {
    return (await planReader()).planOf(source, hint);
  }

  async changedPlan(step: PlanStep): Promise<PlanChange> {
    return (await planReader()).changedPlan(step);
  }

  /** Takes over a guard that has been read elsewhere. */
  know(guard: number, source: BuildSource, build: Build): void {
    this.#guards.set(guard, new KnownGuard(readingOf(source, build)));
  }

  forget(guard: number): void {
    this.#guards.delete(guard);
  }

  view({ guard, settings, family, other, wantsPath, shownShape }: ViewRequest): ViewAnswer {
    const known = this.#guard(guard);
    const path = wantsPath ? known.pathIn(settings) : undefined;
    return {
      label: known.labelIn(settings),
      family: familyOf(known, settings, family, other === undefined ? undefined : this.#guard(other)),
      path: path?.shape === shownShape ? undefined : path,
    };
  }

  /** What sounds in each of several settings. */
  labels(guard: number, settings: readonly RawSettings[]): string[] {
    const known = this.#guard(guard);
    return settings.map((each) => known.labelIn(each));
  }

  /** Where two guards differ most: in a setting, and over every position and tone. */
  differences(a: number, b: number, settings: RawSettings): { here: LargestDifference; overall: LargestDifference } {
    const [inA, inB] = [this.#guard(a), this.#guard(b)];
    return { here: largestDifference(inA, inB, settings), overall: largestOfAll(inA, inB, settings) };
  }

  #guard(guard: number): KnownGuard {
    const known = this.#guards.get(guard);
    if (!known) throw new RangeError(`no guard has the number ${guard}`);
    return known;
  }
}
