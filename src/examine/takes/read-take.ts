import type { Settings } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { pointsOf, ratio, type Uncertain } from "../../measure/impedance/uncertain.ts";
import { requireOrder } from "../../measure/methods/behind-resistor.ts";
import { inGain, requireGain } from "../../measure/methods/channel-gain.ts";
import { type Recorded, readBoth, readLouder } from "../../measure/recording/channels.ts";
import { type Reading, readRecording } from "../../measure/recording/read-recording.ts";
import type { SignalKind } from "../../measure/signal/measuring-signal.ts";
import { type Take, usedFrequencies } from "./take.ts";

/** Of what is played, under this share a channel is taken as silent: a shorted jack, a broken way. */
const SILENT_SHARE = 5e-4;

/** How the channels hang: what is played, then the jack. */
export type Order = readonly [played: number, jack: number];

/** A take with the readings that it came from. */
export interface ReadTake {
  readonly take: Take;
  readonly readings: readonly Reading[];
}

const rms = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, each) => sum + each * each, 0) / samples.length);

function isSilent({ channels }: Recorded, [played, jack]: Order): boolean {
  return rms(channels[jack]!) < SILENT_SHARE * rms(channels[played]!);
}

/** No input leaves nothing but zeros, not even a shorted one: it was muted, or not recorded. */
function requireRecorded({ channels, path }: Recorded): void {
  const silent = channels.findIndex((samples) => samples.every((each) => each === 0));
  if (silent < 0) return;
  const message = `has nothing but zeros in channel ${silent + 1}; expected a recording of both inputs, neither muted`;
  throw faultAt("DATA_INSUFFICIENT", path, message);
}

/** Jack over what was played; where the jack is silent, nothing with what silence was heard to be. */
function readShare(signal: SignalKind, recorded: Recorded, order: Order): { ratios: Uncertain[]; readings: Reading[] } {
  requireRecorded(recorded);
  if (isSilent(recorded, order)) {
    const { sampleRateHz, channels, path } = recorded;
    const played = channels[order[0]]!;
    const reading = readRecording(signal, played, sampleRateHz, path);
    return { ratios: Array.from(reading.re, () => ({ re: 0, im: 0, sd: SILENT_SHARE })), readings: [reading] };
  }
  const [played, jack] = readBoth(signal, recorded, order);
  const [above, below] = [pointsOf(jack), pointsOf(played)];
  return { ratios: above.map((each, i) => ratio(each, below[i]!)), readings: [played, jack] };
}

function takeOf(
  settings: Settings,
  through: Take["through"],
  points: readonly Uncertain[],
  all: Float64Array,
  hasReference: boolean,
): Take {
  const used = usedFrequencies(all);
  const column = (key: keyof Uncertain) => Float64Array.from(used, (index) => points[index]![key]);
  return {
    settings,
    through,
    frequenciesHz: Float64Array.from(used, (index) => all[index]!),
    re: column("re"),
    im: column("im"),
    sd: column("sd"),
    hasReference,
  };
}

/**
 * Both channels on one point: what they differ by.
 * @throws DATA_INSUFFICIENT where one of them was not on it
 */
export function readGain(
  signal: SignalKind,
  recorded: Recorded,
  order: Order,
): { gain: Uncertain[]; readings: Reading[] } {
  const { ratios, readings } = readShare(signal, recorded, order);
  requireGain(ratios, recorded.path);
  return { gain: ratios, readings };
}

/**
 * A sweep through the resistor into the jack.
 * @throws DATA_INSUFFICIENT naming what is wrong with the recording, swapped channels among it
 */
export function readJackTake(
  signal: SignalKind,
  recorded: Recorded,
  order: Order,
  settings: Settings,
  gain?: readonly Uncertain[],
): ReadTake {
  if (recorded.channels.length < 2) throw faultAt("REQUEST_INVALID", recorded.path, "has one channel; expected two");
  const { ratios, readings } = readShare(signal, recorded, order);
  const shares = inGain(ratios, gain);
  requireOrder(shares, recorded.path, gain !== undefined);
  return { take: takeOf(settings, "jack", shares, readings[0]!.frequenciesHz, true), readings };
}

/** What reaches the jack of a coil laid over one of the guard's; of one channel without what was played. */
export function readExciterTake(
  signal: SignalKind,
  recorded: Recorded,
  order: Order,
  settings: Settings,
  through: Exclude<Take["through"], "jack">,
): ReadTake {
  if (recorded.channels.length < 2) {
    const reading = readLouder(signal, recorded);
    return {
      take: takeOf(settings, through, pointsOf(reading), reading.frequenciesHz, false),
      readings: [reading],
    };
  }
  const { ratios, readings } = readShare(signal, recorded, order);
  return { take: takeOf(settings, through, ratios, readings[0]!.frequenciesHz, true), readings };
}
