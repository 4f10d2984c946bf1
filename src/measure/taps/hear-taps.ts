import { louderChannel } from "../../audio/louder-channel.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { decibels } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";
import { otherSound } from "./other-sound.ts";
import type { TapStep } from "./plan-taps.ts";
import { findSwings, floorAt, noiseFloor, type Swing } from "./swings.ts";
import type { TapGroup } from "./tap-groups.ts";
import { tapSign } from "./tap-sign.ts";
import { tapSignal } from "./tap-signal.ts";
import { type TapTiming, tapWindows } from "./tap-windows.ts";
import { medianOf, withoutHum } from "./without-hum.ts";

/** What one step of the plan made at the input. */
export interface HeardTap {
  readonly step: TapStep;
  /** Seconds of the take of its first and last swing; absent where nothing was heard. */
  readonly between?: readonly [number, number];
  readonly swings: number;
  /** dB re full scale; absent where nothing was heard. */
  readonly level?: number;
  /** dB re full scale under which nothing would have been heard. */
  readonly floor: number;
  /** Which way the coming tool swings; over a whole take free. */
  readonly sign: 1 | -1;
  /** How likely that is, 0.5 to 1. */
  readonly certainty: number;
  readonly isClipped: boolean;
}

export interface TapTake {
  readonly path: string;
  readonly sampleRateHz: number;
  readonly channels: readonly Float32Array[];
}

/** No more than the one step of 16 bits that dither makes of nothing: nothing was connected, or the channel is muted. */
const SILENT_UP_TO = 1.5 * 2 ** -15;

/** The level of a group: of the swings that come, by the sign that was found; the middle one, since hands differ by 6 dB. */
function levelOf(swings: readonly Swing[], sign: 1 | -1): number {
  const coming = swings.filter((swing) => swing.sign === sign);
  return decibels(medianOf((coming.length > 0 ? coming : swings).map(({ size }) => size)));
}

function heardTap(step: TapStep, group: TapGroup | undefined, floor: number): HeardTap {
  if (!group) return { step, swings: 0, floor, sign: 1, certainty: 0.5, isClipped: false };
  const { sign, certainty } = tapSign(group.swings);
  return {
    step,
    between: [group.from, group.to],
    swings: group.swings.length,
    level: levelOf(group.swings, sign),
    floor,
    sign,
    certainty,
    isClipped: group.swings.some(({ isClipped }) => isClipped),
  };
}

/** The noise where a step was tapped, or where between its neighbours it must have been. */
function floorOf(floor: Float64Array, groups: readonly (TapGroup | undefined)[], index: number): number {
  const before = groups.slice(0, index + 1).findLast((group) => group !== undefined)?.to;
  const after = groups.slice(index).find((group) => group !== undefined)?.from;
  const at = groups[index]?.from ?? ((before ?? after ?? 0) + (after ?? before ?? 0)) / 2;
  return decibels(floorAt(floor, at));
}

/**
 * What each step of a plan of taps made in one take.
 * @throws DATA_INSUFFICIENT under the take's path: silence, music, the measuring signal, or taps that cannot be given to the steps
 */
export function hearTaps(
  { path, sampleRateHz, channels }: TapTake,
  steps: readonly TapStep[],
  timing: TapTiming,
  { checkpoint }: Checkpoint,
): HeardTap[] {
  const samples = louderChannel(channels);
  if (samples.every((each) => Math.abs(each) < SILENT_UP_TO)) {
    const message =
      "is silent: nothing was recorded. Choose the input that the lead is in, turn its gain up, and record again";
    throw faultAt("DATA_INSUFFICIENT", path, message);
  }
  const signal = tapSignal(samples, sampleRateHz);
  checkpoint();
  const clear = withoutHum(signal.low);
  checkpoint();
  const other = otherSound(path, sampleRateHz, samples, clear);
  if (other) throw other;
  const floor = noiseFloor(clear);
  const groups = tapWindows(path, findSwings(clear, signal, floor), steps, timing);
  return steps.map((step, i) => heardTap(step, groups[i], floorOf(floor, groups, i)));
}
