import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Settings } from "../../build-file/settings.ts";
import { flatDrive } from "../../choice/drive.ts";
import { curveFor, Guard } from "../../choice/guard.ts";
import { Measured } from "../../choice/wanted/measured.ts";
import { SILENCE_DB } from "../../decibels.ts";
import { REFERENCE_HZ } from "../../response/features.ts";
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
/** A quarter of a mark is within anybody's setting of it. */
const SAME_DIAL = 0.25;
/** Less treble lost or kept is hardly heard; a choice. */
const NOTICED_DB = 1;

/** A guard in one of its positions, its volumes turned. */
class Turned {
  readonly pots: readonly string[];
  readonly #guard: Guard;
  readonly #played: PlayedGuard;
  readonly #position: Settings;
  readonly #openDb: number;

  constructor(played: PlayedGuard, index: number) {
    this.#played = played;
    this.#guard = new Guard(played.build);
    this.#position = played.positions[index]!;
    this.pots = played.active("volume", this.#position);
    this.#openDb = this.#levelAt(10);
  }

  /** dB at 200 Hz, where a treble bleed has hardly begun. */
  #levelAt(dial: number): number {
    const settings = this.#played.turned(this.#position, this.pots, dial);
    return curveFor(this.#guard.transfers(settings), Float64Array.of(REFERENCE_HZ))[0]!;
  }

  get isTurned(): boolean {
    return this.pots.length > 0 && this.#openDb > SILENCE_DB / 2;
  }

  /** dB that the knob takes at a dial. */
  fallAt(dial: number): number {
    return this.#levelAt(dial) - this.#openDb;
  }

  get treble(): number | null {
    const measured = new Measured(this.#guard, flatDrive(), [this.#position]);
    return measured.valueOf("volumeTreble", { settings: this.#position, together: 0 });
  }
}

function bleedWords(old: PlayedGuard, now: PlayedGuard): string {
  const has = ({ build }: PlayedGuard) => Object.keys(build.parts).some((name) => /^bleed/i.test(name));
  const [before, after] = [has(old), has(now)];
  if (before === after) return "";
  return after
    ? " The new guard has a treble bleed, the old one had none."
    : " The old guard had a treble bleed, the new one has none.";
}

function trebleWords([before, after]: readonly [number, number]): string {
  const more = after - before;
  if (Math.abs(more) < NOTICED_DB) return " Turned down to 6 it keeps its treble as before.";
  return ` Turned down to 6 it keeps ${Math.abs(more).toFixed(1)} dB ${more > 0 ? "more" : "less"} of its treble.`;
}

function knobOf(old: Turned, now: Turned, bleed: string): VolumeKnob {
  if (!old.isTurned || !now.isTurned)
    return { dials: [], treble: null, text: "No volume knob works there in one of the guards." };
  const dials = USUAL_DIALS.map((from): VolumeDial => {
    const fallDb = old.fallAt(from);
    return { from, fallDb, to: matchingDial((dial) => now.fallAt(dial), fallDb, SAME_FALL_DB) };
  });
  const [before, after] = [old.treble, now.treble];
  const treble = before === null || after === null ? null : ([before, after] as const);
  const isSame = dials.every(({ from, to }) => to !== null && Math.abs(to - from) < SAME_DIAL);
  const told = dials.map(({ from, to }) =>
    to === null ? `no place is like the old ${from}` : `${to.toFixed(1)} is the old ${from}`,
  );
  const turn = isSame ? "The volume falls as before." : `The volume falls another way: ${told.join(", ")}.`;
  return { dials, treble, text: `${turn}${treble ? trebleWords(treble) : ""}${bleed}` };
}

/** How the volume knob goes on the new guard, for the first position in which each pair of knobs works. */
export function volumeKnobs(
  old: PlayedGuard,
  now: PlayedGuard,
  positions: number,
): (VolumeKnob & { readonly positions: readonly number[] })[] {
  const bleed = bleedWords(old, now);
  const found = new Map<string, { first: number; positions: number[] }>();
  for (let index = 0; index < positions; index++) {
    const key = [old, now].map((guard) => guard.active("volume", guard.positions[index]!).join()).join(" ");
    const known = found.get(key) ?? { first: index, positions: [] };
    known.positions.push(index + 1);
    found.set(key, known);
  }
  return Array.from(found.values(), ({ first, positions: those }) => ({
    ...knobOf(new Turned(old, first), new Turned(now, first), bleed),
    positions: those,
  }));
}

/** Tone knobs without load at 10 on one guard and not on the other. */
export function noLoadWords(old: PlayedGuard, now: PlayedGuard): string[] {
  const has = ({ build }: PlayedGuard) => partsOfKind(build, "pot").some(([, { noLoad }]) => noLoad === true);
  if (has(old) === has(now)) return [];
  return has(now)
    ? [
        "A tone knob of the new guard leaves the circuit at 10: a step is felt or heard just under it, and 10 is brighter.",
      ]
    : ["The old guard's tone knob left the circuit at 10; the new one loads a little even there."];
}
