import { describePart } from "../../../bench/parts/describe-part.ts";
import { buildable } from "../../../choice/buildable/buildable.ts";
import type { BuildableQuestion } from "../../../choice/buildable/question.ts";
import { guardWords } from "../../../choice/buildable/words.ts";
import type { BuildableAnswer, BuildableBody } from "../../../contract/buildable.ts";
import type { Piece } from "../../../drawer/pieces.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";
import { freePieces } from "./free-pieces.ts";

const BASIS =
  "Each guard is heard with the usual phrase plucked on its own strings, every coil in its place, in every position of every" +
  " switch with all tones at 10 and at 0. Two sounds count as one where, equally loud through a guitar speaker, they differ by less than 1.25 dB" +
  " in every ERB band; hum, level and treble are of the circuit as drawn. Parts that a guard has by custom are looked for: tones" +
  " before the volume, caps of 1 to 220 nF in them, bleeds of 0.1 to 3.3 nF, up to three push-pulls or small switches; wire and the" +
  " guitar's own metal are taken as there. Not looked for: tones after the volume, volumes that leave each other alone, resistors" +
  " beside those of a treble bleed, more than three push-pulls or small switches, and tones set otherwise than all at 10 or all at 0.";

type Line = BuildableAnswer["best"][number]["staysOver"][number];

/** Pieces alike on one line. */
function linesOf(pieces: readonly Piece[]): Line[] {
  const lines = new Map<string, Line>();
  for (const { part, source, measured } of pieces) {
    const key = JSON.stringify([source, measured]);
    const known = lines.get(key) ?? {
      ...describePart(part),
      count: 0,
      source,
      ...(measured === undefined ? {} : { measured }),
    };
    lines.set(key, { ...known, count: known.count + 1 });
  }
  return [...lines.values()];
}

function read({ drawer, soldered, layouts, hasJack }: BuildableBody): BuildableQuestion {
  return { free: freePieces(drawer, soldered), layouts, hasJack };
}

function run(question: BuildableQuestion, { checkpoint }: JobContext): BuildableAnswer {
  const { best, purchases, ...rest } = buildable(question, { driveOf: pluckedDrive, checkpoint });
  return {
    ...rest,
    best: best.map(({ plan, build, staysOver, ...found }) => ({
      ...found,
      plan,
      says: guardWords(plan, build),
      staysOver: linesOf(staysOver),
    })),
    purchases: purchases.map(({ part, ...purchase }) => ({ ...describePart(part), ...purchase })),
    basis: BASIS,
  };
}

export const buildableJob = {
  read,
  run,
  size: () => "large",
  gate: "render",
} satisfies Job<BuildableQuestion, BuildableAnswer>;
