import type { SwitchQuestion } from "../../bench/switch-finder/question.ts";
import type { Build } from "../../build-file/schema.ts";
import type { BenchAnswer } from "../../contract/bench/bench.ts";
import type { SwitchAnswer } from "../../contract/bench/switch-finder.ts";
import type { BenchDesk, BenchQuestion, Fault } from "./bench-desk.ts";
import type { RewiringTold } from "./rewire-told.ts";
import { WorkerLink } from "./worker-link.ts";

/** The bench, worked out beside the page's own thread; it starts with the first question. */
export class BenchEngine {
  readonly #link = new WorkerLink<BenchDesk>("bench-worker");

  /** @throws Error in the bench's own words where it refuses the question */
  ask(question: BenchQuestion): Promise<BenchAnswer> {
    return this.#link.ask((desk) => desk.ask(question));
  }

  rewire(from: Build, to: Build): Promise<RewiringTold> {
    return this.#link.ask((desk) => desk.rewire(from, to));
  }

  findSwitch(question: SwitchQuestion): Promise<SwitchAnswer> {
    return this.#link.ask((desk) => desk.findSwitch(question));
  }

  faults(build: Build): Promise<Fault[]> {
    return this.#link.ask((desk) => desk.faults(build));
  }
}
