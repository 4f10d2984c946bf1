import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import type { Build } from "../../build-file/schema.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { FamilyAxis } from "../state/app-state.ts";
import { type BuildSource, type Reading, type ReadResult, readingOf } from "../state/reading.ts";
import type { CurveDesk, ViewAnswer } from "./curve-desk.ts";
import type { LargestDifference } from "./curve-difference.ts";
import { GuardNumbers } from "./guard-numbers.ts";
import type { PlanAnswer, PlanChange, PlanStep } from "./plan-reader.ts";
import type { LongForm } from "./source-reader.ts";
import { WorkerLink } from "./worker-link.ts";

/** Reading, curves, words and live paths, worked out beside the page's own thread. */
export class Engine {
  readonly #link = new WorkerLink<CurveDesk>("curve-worker");
  readonly #numbers = new GuardNumbers((guard) => void this.#link.ask((desk) => desk.forget(guard)));

  /** Makes the next reading quick. */
  prepare(): Promise<void> {
    return this.#link.ask((desk) => desk.prepare());
  }

  async read(source: BuildSource): Promise<ReadResult> {
    const number = this.#numbers.next();
    const result = await this.#link.ask((desk) => desk.read(number, source));
    return "faults" in result ? result : { reading: this.#numbered(number, source, result.build) };
  }

  /** A reading of a build that has been read before. */
  know(source: BuildSource, build: Build): Reading {
    const number = this.#numbers.next();
    void this.#link.ask((desk) => desk.know(number, source, build));
    return this.#numbered(number, source, build);
  }

  longFormOf(input: unknown): Promise<LongForm> {
    return this.#link.ask((desk) => desk.longFormOf(input));
  }

  planOf(source: BuildSource, hint: PlanInput | undefined): Promise<PlanAnswer> {
    return this.#link.ask((desk) => desk.planOf(source, hint));
  }

  changedPlan(step: PlanStep): Promise<PlanChange> {
    return this.#link.ask((desk) => desk.changedPlan(step));
  }

  view(
    reading: Reading,
    shown: {
      readonly settings: RawSettings;
      readonly family: FamilyAxis;
      readonly other: Reading | undefined;
      readonly wantsPath: boolean;
      readonly shownShape: number | undefined;
    },
  ): Promise<ViewAnswer> {
    const { other, ...rest } = shown;
    const request = {
      ...rest,
      guard: this.#numbers.of(reading),
      other: other && this.#numbers.of(other),
    };
    return this.#link.ask((desk) => desk.view(request));
  }

  /** What sounds in each of several settings. */
  labels(reading: Reading, settings: readonly RawSettings[]): Promise<string[]> {
    return this.#link.ask((desk) => desk.labels(this.#numbers.of(reading), settings));
  }

  /** Where two guards differ most: in a setting, and over every position and tone. */
  differences(
    a: Reading,
    b: Reading,
    settings: RawSettings,
  ): Promise<{ here: LargestDifference; overall: LargestDifference }> {
    return this.#link.ask((desk) => desk.differences(this.#numbers.of(a), this.#numbers.of(b), settings));
  }

  #numbered(number: number, source: BuildSource, build: Build): Reading {
    const reading = readingOf(source, build);
    this.#numbers.give(reading, number);
    return reading;
  }
}
