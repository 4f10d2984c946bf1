import { type Settings, withControl } from "../../build-file/settings.ts";
import { SILENT_POWER } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";
import { levelMatchedDifference } from "../compare/difference.ts";
import { inDecibels, inHertz } from "../compare/verdict.ts";
import { type Drive, flatDrive } from "../drive.ts";
import { camOf } from "../erb.ts";
import { energiesFor, featuresFor, type Guard } from "../guard.ts";
import { SLICES } from "../slices.ts";

/** What a search is after. Settings are of the build searched; `like` has its own target. */
export type Wish =
  | { readonly kind: "peak"; readonly frequencyHz: number; readonly settings: Settings }
  | { readonly kind: "tone-halfway"; readonly settings: Settings }
  | { readonly kind: "keeps-treble"; readonly settings: Settings; readonly dial: number }
  | { readonly kind: "as-bright"; readonly settings: Settings; readonly as: readonly Settings[] }
  | {
      readonly kind: "like";
      readonly settings: Settings;
      readonly target: { readonly guard: Guard; readonly settings: Settings };
    };

/** How far a guard is from the wish: smaller is better. */
export interface Score {
  readonly cost: number;
  readonly says: string;
}

/** Null where the wish has no meaning for the guard: no peak, no tone control's work to halve, silence. */
export type Scorer = (guard: Guard) => Score | null;

export const COST_MEANINGS: Readonly<Record<Wish["kind"], string>> = {
  peak: "octaves between the peak and the frequency wished for",
  "tone-halfway":
    "distance of tone 5's brightness from the middle between tone 10 and tone 0, as a fraction of their distance",
  "keeps-treble":
    "how far the sound differs from volume 10 once both are equally loud, on average over the ear's bands, in dB (RMS over ERB bands)",
  "as-bright":
    "how far apart the centres of the two sounds lie on the ear's own scale of pitch, in widths of its bands (Cams, ERB numbers)",
  like: "how far the two sounds differ once equally loud, on average over the ear's bands, in dB (RMS over ERB bands)",
};

/** A tone control that moves the brightness by less has nothing to halve: about half the ear's smallest band. */
const LEAST_TONE_TRAVEL_CAMS = 0.5;
const FLAT: Drive = flatDrive();
const SLICE_CAMS = SLICES.frequenciesHz.map(camOf);

/**
 * Centre of the spectrum on the ERB-number scale, in Cams, every band driven the same. The spectrum's centre is what brightness
 * goes with (J. M. Grey, J. Acoust. Soc. Am. 61, 1270, 1977; from memory).
 */
export function brightnessCams(guard: Guard, settings: Settings): number | null {
  const energies = energiesFor(guard.transfers(settings), FLAT);
  let [sum, moment] = [0, 0];
  for (const [k, energy] of energies.entries()) {
    sum += energy;
    moment += energy * SLICE_CAMS[k]!;
  }
  return sum > SILENT_POWER ? moment / sum : null;
}

function between(a: { guard: Guard; settings: Settings }, b: { guard: Guard; settings: Settings }) {
  const [first, second] = [a, b].map(({ guard, settings }) => energiesFor(guard.transfers(settings), FLAT));
  const difference = levelMatchedDifference(first!, second!);
  return difference.silent.includes(true) ? null : difference;
}

function differenceScore(a: Parameters<typeof between>[0], b: Parameters<typeof between>[1]): Score | null {
  const difference = between(a, b);
  if (!difference) return null;
  const { db, band } = difference.largest;
  return { cost: difference.rmsDb, says: `differs by at most ${inDecibels(db)} (at ${inHertz(band.centre)})` };
}

function peakScore(guard: Guard, settings: Settings, wished: number): Score | null {
  const { peak } = featuresFor(guard.transfers(settings));
  if (!peak) return null;
  const says = `peak ${inDecibels(peak.level)} high at ${inHertz(peak.frequency)}`;
  return { cost: Math.abs(Math.log2(peak.frequency / wished)), says };
}

function withRole(guard: Guard, settings: Settings, role: string, dial: number): Settings {
  return withControl(guard.controls, settings, role, dial);
}

function halfwayScore(guard: Guard, settings: Settings): Score | null {
  const [open, half, shut] = [10, 5, 0].map((dial) => brightnessCams(guard, withRole(guard, settings, "tone", dial)));
  if (open == null || half == null || shut == null) return null;
  if (Math.abs(open - shut) < LEAST_TONE_TRAVEL_CAMS) return null;
  const share = (half - shut) / (open - shut);
  return { cost: Math.abs(share - 0.5), says: `tone 5 stands at ${Math.round(100 * share)} % of the way from 0 to 10` };
}

function brightScore(guard: Guard, settings: Settings, as: readonly Settings[]): Score | null {
  const own = brightnessCams(guard, settings);
  const others = as.map((other) => brightnessCams(guard, other));
  if (own === null || others.includes(null)) return null;
  const mean = others.reduce((sum: number, cams) => sum + cams!, 0) / others.length;
  const way = own > mean ? "brighter" : "darker";
  return { cost: Math.abs(own - mean), says: `${Math.abs(own - mean).toFixed(2)} of the ear's bands (Cam) ${way}` };
}

function needsRole(guard: Guard, role: string): void {
  if (guard.controls.potsWithRole(role).length === 0)
    throw faultAt("REQUEST_INVALID", "wish", `the build has no pot with the role "${role}", which this wish turns`);
}

/**
 * How guards are scored for a wish.
 * @throws PresolderError REQUEST_INVALID where the build lacks the control that the wish turns
 */
export function scorerFor(wish: Wish, base: Guard): Scorer {
  const { settings } = wish;
  switch (wish.kind) {
    case "peak":
      return (guard) => peakScore(guard, settings, wish.frequencyHz);
    case "tone-halfway":
      needsRole(base, "tone");
      return (guard) => halfwayScore(guard, settings);
    case "keeps-treble":
      needsRole(base, "volume");
      return (guard) =>
        differenceScore(
          { guard, settings: withRole(guard, settings, "volume", 10) },
          { guard, settings: withRole(guard, settings, "volume", wish.dial) },
        );
    case "as-bright":
      return (guard) => brightScore(guard, settings, wish.as);
    case "like":
      return (guard) => differenceScore(wish.target, { guard, settings });
  }
}
