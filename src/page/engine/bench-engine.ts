import type { StringLevelsQuestion } from "../../audio/string-levels/usable-plucks.ts";
import type { DielectricsTold } from "../../bench/dielectrics/told.ts";
import type { Habits } from "../../bench/heights/habits/habits.ts";
import type { HeightsTold } from "../../bench/heights/heights-told.ts";
import type { Passport } from "../../bench/passport/passport.ts";
import type { Measures } from "../../bench/room/measures.ts";
import type { SwitchQuestion } from "../../bench/switch-finder/question.ts";
import type { Build } from "../../build-file/schema.ts";
import type { BenchAnswer } from "../../contract/bench/bench.ts";
import type { HeightsAsked } from "../../contract/bench/heights.ts";
import type { SwitchAnswer } from "../../contract/bench/switch-finder.ts";
import type { BenchDesk, BenchQuestion, Fault, PassportQuestion } from "./bench-desk.ts";
import type { DrawerAsked, DrawerReply } from "./drawer-answer.ts";
import type { GuardPartsAsked, GuardPartsReply } from "./guard-parts-told.ts";
import type { Replied } from "./heights-reader.ts";
import type { LeadsAsked, LeadsTold } from "./leads-told.ts";
import type { NoiseAsked, NoiseReply } from "./noise-asked.ts";
import type { RewiringTold } from "./rewire-told.ts";
import type { RoomAsked } from "./room-asked.ts";
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

  /** @throws Error naming what of the question the guard does not have */
  passport(question: PassportQuestion): Promise<Passport> {
    return this.#link.ask((desk) => desk.passport(question));
  }

  room(build: Build, measures: Measures): Promise<RoomAsked> {
    return this.#link.ask((desk) => desk.room(build, measures));
  }

  /** @throws Error in the bench's own words where it refuses the question */
  leads(asked: LeadsAsked): Promise<LeadsTold> {
    return this.#link.ask((desk) => desk.leads(asked));
  }

  freePlaces(build: Build): Promise<string[]> {
    return this.#link.ask((desk) => desk.freePlaces(build));
  }

  noise(asked: NoiseAsked): Promise<NoiseReply> {
    return this.#link.ask((desk) => desk.noise(asked));
  }

  heights(build: Build, asked: HeightsAsked): Promise<Replied<HeightsTold>> {
    return this.#link.ask((desk) => desk.heights(build, asked));
  }

  habits(from: Build, to: Build): Promise<Habits> {
    return this.#link.ask((desk) => desk.habits(from, to));
  }

  stringLevels(file: Uint8Array, question: StringLevelsQuestion): Promise<Replied<readonly number[]>> {
    return this.#link.ask((desk) => desk.stringLevels(file, question));
  }

  dielectrics(build: Build, caps: readonly string[]): Promise<DielectricsTold> {
    return this.#link.ask((desk) => desk.dielectrics(build, caps));
  }

  findSwitch(question: SwitchQuestion): Promise<SwitchAnswer> {
    return this.#link.ask((desk) => desk.findSwitch(question));
  }

  drawer(asked: DrawerAsked): Promise<DrawerReply> {
    return this.#link.ask((desk) => desk.drawer(asked));
  }

  guardParts(asked: GuardPartsAsked): Promise<GuardPartsReply> {
    return this.#link.ask((desk) => desk.guardParts(asked));
  }

  faults(build: Build): Promise<Fault[]> {
    return this.#link.ask((desk) => desk.faults(build));
  }
}
