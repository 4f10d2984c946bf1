import { type InputFault, refused } from "../../errors.ts";
import { millimetresText } from "../../lengths.ts";
import type { FittedLaws } from "./fit-laws.ts";
import { gapUnder } from "./gaps.ts";
import { heightCounts } from "./height-counts.ts";
import type { Recorded } from "./recorded.ts";

/** An exponent known to half of itself still puts a move of 3 dB right to a quarter turn, as customary screws are cut. */
const MOST_UNCERTAIN = 0.5;
/** Twice what the slope of a rod magnet's squared field comes to at customary gaps. */
const STEEPEST = 12;
/** What the next recording is to bring it to. */
const WANTED = 0.25;
/** The second height where there is none yet: some 3 dB for the laws that are usual. */
const FIRST_RATIO = 1.4;

/** Least and greatest gap in the middle of a pickup among the recordings. */
function spanOf({ observations, stringCount }: Recorded, pickup: number): { least: number; most: number } {
  const middle = (stringCount + 1) / 2;
  const seen = observations.map(({ gaps }) => gapUnder(gaps[pickup]!, middle, stringCount));
  return { least: Math.min(...seen), most: Math.max(...seen) };
}

function faultOf(recorded: Recorded, fitted: FittedLaws, pickup: number): InputFault | undefined {
  const path = `pickups.${recorded.pickups[pickup]}`;
  const { least, most } = spanOf(recorded, pickup);
  const target = (ratio: number) =>
    `turn both its screws until the gap is ${millimetresText(least * ratio)} or more, or as far as they go, and record every position again`;
  if (heightCounts(recorded)[pickup]! < 2)
    return { path, message: `stands at one height in all recordings; expected two: ${target(FIRST_RATIO)}` };
  const exponent = fitted.exponents[pickup]!;
  const range = fitted.t * fitted.exponentErrors[pickup]!;
  if (exponent + range < 0) {
    const message =
      "its levels rise as the gap grows, which no pickup does; expected the opposite: look whether two height sets were exchanged, or strings listed from the lowest";
    return { path, message };
  }
  if (exponent - range > STEEPEST) {
    const message = `its levels fall as the gap to the power of ${exponent.toFixed(0)}, which no pickup does; expected less than ${STEEPEST}: look whether a gap was mistyped, or one recording made at another level`;
    return { path, message };
  }
  if (range <= MOST_UNCERTAIN * exponent) return undefined;
  const aim = WANTED * Math.max(1, exponent);
  const ratio = Math.min(3, Math.max(FIRST_RATIO, (most / least) ** Math.min(10, range / aim)));
  const known = Number.isFinite(range) ? `${exponent.toFixed(1)} ± ${range.toFixed(1)}` : "anything";
  const message = `was recorded at gaps from ${millimetresText(least)} to ${millimetresText(most)}, too near each other to tell how its level falls with the gap: the exponent may be ${known}. Instead ${target(ratio)}; pluck every string three times, evenly`;
  return { path, message };
}

/** @throws PresolderError DATA_INSUFFICIENT naming every pickup whose law the recordings leave open, and what to record */
export function expectTold(recorded: Recorded, fitted: FittedLaws): void {
  const faults = recorded.pickups.flatMap((_, pickup) => faultOf(recorded, fitted, pickup) ?? []);
  if (faults.length > 0) throw refused("DATA_INSUFFICIENT", faults);
}
