import type { Build } from "../../build-file/schema.ts";
import { parseSettings, type RawSettings, rawSettings } from "../../build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../build-file/sweep.ts";
import { answerBetween } from "../../choice/compare/answer-between.ts";
import type { Side } from "../../choice/compare/comparison-row.ts";
import { heardRows } from "../../choice/compare/heard-rows.ts";
import { Guard } from "../../choice/guard.ts";
import type { Playing } from "../../render/playing.ts";
import { phraseDrive } from "../cells/phrase-drive.ts";
import { fitSettings } from "../state/fit-settings.ts";

export interface ComparisonQuestion {
  readonly builds: readonly [Build, Build];
  readonly settings: RawSettings;
  /** What is moved of both. */
  readonly sweep: RawSweep;
  readonly playing: Playing;
  /** What the example asks, in words. */
  readonly question?: string | undefined;
}

/** A sentence, and the phrase that it speaks of. */
export interface HereAnswer {
  readonly answer: string;
  readonly phrase: string;
}

/** Works out beside the page's own thread what two guards differ by. */
export class AnswerDesk {
  /**
   * What the second guard has otherwise and where it is heard, in a sentence, with the usual phrase as the hand plays it.
   * @throws PresolderError for a harness without pickups, or a sweep that the first guard has no controls for
   */
  answer({ builds: [first, second], settings, sweep, playing, question }: ComparisonQuestion): HereAnswer {
    const [a, b] = [new Guard(first), new Guard(second)];
    const inA = expandSweep(a.controls, sweep, fitSettings(a, settings));
    const inB = inA.map((each) => parseSettings(b.controls, fitSettings(b, rawSettings(a.controls, each))));
    const sideOf = (guard: Guard, own: Side["settings"]): Side => ({
      guard,
      drive: phraseDrive(guard, playing),
      settings: own,
    });
    const sides = [sideOf(a, inA), sideOf(b, inB)] as const;
    return { answer: answerBetween(...sides, heardRows(...sides), question).answer, phrase: sides[0].drive.name };
  }
}
