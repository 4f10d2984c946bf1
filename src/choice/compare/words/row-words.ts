import { capitalised } from "../../../english.ts";
import type { HeardRow, Weighed } from "../comparison-row.ts";
import { type PeakShift, RESONANCE_THRESHOLDS } from "../resonance-jnd.ts";
import { AUDIBILITY_WORDS, type Audibility, figureWords, inHertz, signedDecibels } from "../verdict.ts";

/** Less is hardly heard from one day to the next; a choice, no source. */
const NOTICED_LU = 0.5;
/** Less hum is nothing beside what another room makes of it; a choice, no source. */
const NOTICED_HUM_DB = 3;

/** A peak is told only where something is heard that it could be the cause of, and only by what is over its threshold. */
function peakWords(shift: PeakShift | null, audible: Audibility): string {
  if (!shift || audible === "none" || audible === "edge") return "";
  const moved = shift.inJnd >= 1;
  const sharper = shift.bandwidth < 0;
  const isReshaped = Math.abs(shift.bandwidth) >= RESONANCE_THRESHOLDS.bandwidth.usual;
  const counted = shift.inJnd.toFixed(1);
  const steps = `, ${counted} just-noticeable step${counted === "1.0" ? "" : "s"}${shift.extrapolated ? " (extrapolated)" : ""}`;
  const way = shift.shiftHz > 0 ? "higher" : "lower";
  // Many steps of a peak would speak against what is only heard side by side.
  const told = [
    ...(moved ? [`${inHertz(shift.shiftHz)} ${way}${audible === "side-by-side" ? "" : steps}`] : []),
    ...(isReshaped ? [sharper ? "sharper" : "blunter"] : []),
  ];
  return told.length === 0 ? "" : `; the second's peak is ${told.join(", and ")}`;
}

export function loudnessWords(loudnessLu: number): string {
  return `${Math.abs(loudnessLu).toFixed(1)} LU ${loudnessLu > 0 ? "louder" : "quieter"}`;
}

export function humWords(humDb: number): string {
  return `${Math.abs(humDb).toFixed(0)} dB ${humDb > 0 ? "more" : "less"} hum`;
}

interface Beside {
  readonly when: string;
  readonly verb: string;
  readonly what: string;
}

/** What besides the sound's colour is another; nothing that is not noticed. */
function besides({ loudnessDifference, humDifference }: Weighed): Beside[] {
  const all: Beside[] = [];
  if (Math.abs(loudnessDifference) >= NOTICED_LU)
    all.push({ when: "left as they are", verb: "is", what: loudnessWords(loudnessDifference) });
  if (humDifference !== null && Math.abs(humDifference) >= NOTICED_HUM_DB)
    all.push({ when: "equally loud", verb: "has", what: humWords(humDifference) });
  return all;
}

const besidesWords = (weighed: Weighed) =>
  besides(weighed)
    .map(({ when, verb, what }) => `; ${when}, the second ${verb} ${what}`)
    .join("");

export function silenceWords([first, second]: readonly [boolean, boolean]): string | undefined {
  if (first && second) return "both are silent";
  if (first || second) return `the ${first ? "first" : "second"} is silent`;
  return undefined;
}

/** One sentence, without its full stop, on one setting. */
export function rowVerdict(
  weighed: Weighed,
  audible: Audibility,
  silent: readonly [boolean, boolean],
  shift: PeakShift | null,
): string {
  const silence = silenceWords(silent);
  if (silence) return silence;
  const { difference, frequency } = weighed.largest;
  const way = audible === "none" || weighed.character === null ? "" : `, the second ${weighed.character}`;
  const heard = AUDIBILITY_WORDS[audible];
  return `they differ by ${figureWords(difference, frequency)}${way}: ${heard}${besidesWords(weighed)}${peakWords(shift, audible)}`;
}

/** "+3.5 dB at 4.6 kHz, brighter, plainly heard": a setting among others. */
export function shortVerdict(weighed: Weighed, audible: Audibility, silent: readonly [boolean, boolean]): string {
  const silence = silenceWords(silent);
  if (silence) return silence;
  const { difference, frequency } = weighed.largest;
  const way = audible === "none" || weighed.character === null ? "" : `, ${weighed.character}`;
  const more = besides(weighed).map(({ when, what }) => `${when} ${what}`);
  const aside = more.length === 0 ? "" : ` (${more.join("; ")})`;
  return `${figureWords(difference, frequency, signedDecibels)}${way}, ${AUDIBILITY_WORDS[audible]}${aside}`;
}

/** What an answer about one setting leaves to say: level, hum and peak. */
export function rowVerdictWords({ row, silent }: HeardRow): string {
  if (silent.includes(true)) return "";
  const told = `${besidesWords(row.weighed)}${peakWords(row.peakShift, row.audible)}`.replace(/^; /, "");
  return told === "" ? "" : ` ${capitalised(told)}.`;
}
