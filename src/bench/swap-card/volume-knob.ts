import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import { SILENCE_DB } from "../../decibels.ts";
import { flatDrive } from "../../choice/drive.ts";
import { Guard } from "../../choice/guard.ts";
import { Measured } from "../../choice/wanted/measured.ts";
import { matchingDial } from "../heights/habits/matching-dial.ts";
import type { PlayedGuard } from "../heights/habits/played-guard.ts";

/** What the new volume knob says where the old one said `from`, for as much less than at 10; null where no place of it does. */
export interface VolumeDial {
  readonly from: number;
  /** dB that the old knob takes there. */
  readonly fallDb: number;
  readonly to: number | null;
}

export interface VolumeKnob {
  readonly dials: readonly VolumeDial[];
  /** dB of treble against the level at 200 Hz, from volume 10 to 6, of the old guard and of the new one. */
  readonly treble: readonly [number, number] | null;
  readonly text: string;
}

/** Where a volume is left by those who use it. */
const USUAL_DIALS = [8, 6, 3];
const SAME_FALL_DB = 0.3;
/** Less treble lost or kept is hardly heard; a choice. */
const NOTICED_DB = 1;

function trebleOf(played: PlayedGuard, index: number): number | null {
  const settings = played.positions[index]!;
  const measured = new Measured(new Guard(played.build), flatDrive(), [settings]);
  return measured.valueOf("volumeTreble", { settings, together: 0 });
}

function dialsOf(old: PlayedGuard, now: PlayedGuard, index: number): VolumeDial[] | null {
  const [from, to] = [old, now].map((guard) => {
    const position = guard.positions[index]!;
    const pots = guard.active("volume", position);
    const open = guard.levelIn(position);
    if (pots.length === 0 || open <= SILENCE_DB / 2) return null;
    return (dial: number) => guard.levelIn(guard.turned(position, pots, dial)) - open;
  });
  if (!from || !to) return null;
  return USUAL_DIALS.map((dial) => {
    const fallDb = from(dial);
    return { from: dial, fallDb, to: matchingDial(to, fallDb, SAME_FALL_DB) };
  });
}

function bleedWords(old: PlayedGuard, now: PlayedGuard): string {
  const has = ({ build }: PlayedGuard) => Object.keys(build.parts).some((name) => /^bleed/i.test(name));
  const [before, after] = [has(old), has(now)];
  if (before === after) return "";
  return after ? " The new guard has a treble bleed, the old one had none." : " The old guard had a treble bleed, the new one has none.";
}

function trebleWords([before, after]: readonly [number, number]): string {
  const more = after - before;
  if (Math.abs(more) < NOTICED_DB) return " Turned down to 6 it keeps its treble as before.";
  return ` Turned down to 6 it keeps ${Math.abs(more).toFixed(1)} dB ${more > 0 ? "more" : "less"} of its treble.`;
}

/** How the volume knob of a position both guards have goes on the new one. */
export function volumeKnob(old: PlayedGuard, now: PlayedGuard, index: number): VolumeKnob {
  const dials = dialsOf(old, now, index);
  if (!dials) return { dials: [], treble: null, text: "No volume knob works in this position of one of the guards." };
  const [before, after] = [trebleOf(old, index), trebleOf(now, index)];
  const treble = before === null || after === null ? null : ([before, after] as const);
  const isSame = dials.every(({ from, to }) => to !== null && Math.abs(to - from) < 0.25);
  const told = dials.map(({ from, to }) => (to === null ? `no place is like the old ${from}` : `${to.toFixed(1)} is the old ${from}`));
  const turn = isSame ? "The volume falls as before." : `The volume falls another way: ${told.join(", ")}.`;
  return { dials, treble, text: `${turn}${treble ? trebleWords(treble) : ""}${bleedWords(old, now)}` };
}

/** Tone knobs without load at 10 on one guard and not on the other. */
export function noLoadWords(old: PlayedGuard, now: PlayedGuard): string[] {
  const has = ({ build }: PlayedGuard) => partsOfKind(build, "pot").some(([, { noLoad }]) => noLoad === true);
  if (has(old) === has(now)) return [];
  return has(now)
    ? ["A tone knob of the new guard leaves the circuit at 10: a step is felt or heard just under it, and 10 is brighter."]
    : ["The old guard's tone knob left the circuit at 10; the new one loads a little even there."];
}
