import { endText } from "../../../bench/sheet/text/end-text.ts";
import { jointText } from "../../../bench/sheet/text/joint-text.ts";
import type { SheetAnswer } from "../../../contract/bench/bench.ts";
import { capitalised } from "../../../english.ts";
import { letterOf } from "../../drawing/joint/letter-spots.ts";
import type { Schedule, SheetEnd, SheetJoint } from "../../drawing/joint/schedule.ts";

export interface EndWords {
  /** As in the picture; empty where there is but one end. */
  readonly letter: string;
  /** As the sheet says it: "the leg of cap2.a". */
  readonly text: string;
  /** What is left hanging of it, in sentences. */
  readonly waits: readonly string[];
}

export interface JointWords {
  readonly ends: readonly EndWords[];
  /** What to do with the ends, called by their letters. */
  readonly action: string;
}

type Sheet = Pick<SheetAnswer, "cuts">;

function textOf(schedule: Schedule, { cuts }: Sheet, { at, waits }: SheetJoint, { onTo, ...end }: SheetEnd): string {
  const { insteadOf: _, ...piece } = schedule.pieceOf(end);
  const comesOn = piece.stops.indexOf(at, piece.grown ? 1 : 0) > 1;
  const cut = cuts.find(({ wire }) => wire === piece.number);
  const hangs = waits.some((wait) => wait.at === end.from && schedule.pieceOf(wait).number === piece.number);
  return endText({ piece, from: end.from, comesOn, hangs, ...(onTo === undefined ? {} : { onTo }) }, cut);
}

function waitsOf(schedule: Schedule, { waits }: SheetJoint, end: SheetEnd): string[] {
  const piece = schedule.pieceOf(end);
  return waits
    .filter((wait) => schedule.pieceOf(wait) === piece)
    .map(({ lead, at, joint }) =>
      lead === undefined
        ? `Its end for ${at} hangs: joint ${joint} takes it.`
        : `It goes on to ${at}: joint ${joint} takes it.`,
    );
}

/** What the sheet says of a joint, its ends one by one and lettered as in the picture. */
export function jointWords(schedule: Schedule, sheet: Sheet, joint: SheetJoint): JointWords {
  const { kind, at, heat } = joint;
  const ends = joint.ends.map((end, index, { length }) => ({
    letter: letterOf(index, length),
    text: textOf(schedule, sheet, joint, end),
    waits: waitsOf(schedule, joint, end),
  }));
  const names = ends.map(({ letter, text }) => letter || text);
  const said = jointText({ kind, at, isAgain: heat.again, ends: names });
  // The place stands over it.
  return { ends, action: capitalised(said.startsWith(`${at}: `) ? said.slice(at.length + 2) : said) };
}
