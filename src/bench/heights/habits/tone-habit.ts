import { listed } from "../../../english.ts";
import { matchingDial } from "./matching-dial.ts";
import type { PlayedGuard } from "./played-guard.ts";

export interface ToneHabit {
  /** Of the main switch, from 1. */
  readonly position: number;
  /** Tone pots that work there, by their names in either guard. */
  readonly before: readonly string[];
  readonly after: readonly string[];
  /** What the new dial says where the old one said `from`, for the same cutoff; null where no dial of the new one has it. */
  readonly dials: readonly { readonly from: number; readonly to: number | null; readonly cutoff: number }[];
  readonly text: string;
}

/** Where a tone knob is left by those who use it: dark, halfway, hardly turned back. */
const USUAL_DIALS = [2, 5, 8];

/** Of the logarithm: a fiftieth is under what is heard of a cutoff. A choice, no source. */
const SAME_CUTOFF = 0.02;

const works = (names: readonly string[]) => (names.length === 1 ? "works" : "work");
const does = (names: readonly string[]) => (names.length === 1 ? "does" : "do");
const called = (guard: PlayedGuard, names: readonly string[]) =>
  listed(names.map((name) => `the ${guard.called(name)}`));

function dialsOf(
  from: PlayedGuard,
  to: PlayedGuard,
  index: number,
  before: readonly string[],
  after: readonly string[],
): ToneHabit["dials"] {
  const [old, now] = [from.positions[index]!, to.positions[index]!];
  const known = new Map<number, number | null>();
  const cutoffAt = (dial: number) => {
    if (!known.has(dial)) known.set(dial, to.cutoffIn(to.turned(now, after, dial)));
    const cutoff = known.get(dial)!;
    return cutoff === null ? null : Math.log(cutoff);
  };
  return USUAL_DIALS.flatMap((dial) => {
    const cutoff = from.cutoffIn(from.turned(old, before, dial));
    return cutoff === null ? [] : [{ from: dial, to: matchingDial(cutoffAt, Math.log(cutoff), SAME_CUTOFF), cutoff }];
  });
}

function dialWords(dials: ToneHabit["dials"]): string {
  const told = dials.map(({ from, to }) =>
    to === null ? `no place is like the old ${from}` : `${to.toFixed(1)} is the old ${from}`,
  );
  return told.length === 0 ? "" : ` For the same cutoff, ${listed(told)}.`;
}

/** Which tone knobs work in a position, and what their dials mean beside the old ones'. */
export function toneHabit(from: PlayedGuard, to: PlayedGuard, index: number): ToneHabit {
  const position = index + 1;
  const before = from.active("tone", from.positions[index]!);
  const after = to.active("tone", to.positions[index]!);
  const start = `Position ${position}:`;
  if (before.length === 0 && after.length === 0)
    return { position, before, after, dials: [], text: `${start} no tone knob works there, as before.` };
  if (after.length === 0)
    return {
      position,
      before,
      after,
      dials: [],
      text: `${start} ${called(from, before)} worked there; now no tone knob does.`,
    };
  if (before.length === 0)
    return {
      position,
      before,
      after,
      dials: [],
      text: `${start} no tone knob worked there; now ${called(to, after)} ${does(after)}, and takes some treble even at 10.`,
    };
  const dials = dialsOf(from, to, index, before, after);
  const who =
    called(from, before) === called(to, after)
      ? `${called(to, after)} ${works(after)} there as before.`
      : `${called(from, before)} worked there; now ${called(to, after)} ${does(after)}.`;
  return {
    position,
    before,
    after,
    dials,
    text: `${start} ${who}${dialWords(dials)}`,
  };
}
