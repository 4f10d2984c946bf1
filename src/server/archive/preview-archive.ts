import { CHAIN_FIGURES } from "../../listening/chain-figures.ts";
import { chainSuffix, type Named } from "../../listening/names.ts";
import { noiseWords } from "../../listening/noise/words.ts";
import { DEFAULT_HAND, DEFAULT_STRING_AGE } from "../../render/playing.ts";
import type { SetBatch, SetRequest } from "../../render/preview-set.ts";
import { isTestSignal } from "../../render/signals.ts";
import { MAX_BOOST_DB, UNKNOWN_FROM_A_RECORDING } from "../../render/undo.ts";
import type { SettingRow } from "./curve-texts.ts";

/** Words for a setting, and what it is heard through, as a file name that every system takes: "02-position-1-tone-7.wav". */
export function fileName(index: number, setting: string, count: number, listening?: Named): string {
  const number = String(index + 1).padStart(Math.max(2, String(count).length), "0");
  const words = setting
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
  return `${number}-${words.slice(0, 80) || "preview"}${chainSuffix(listening)}.wav`;
}

const rounded = (value: number | null, digits: number) => (value === null ? null : Number(value.toFixed(digits)));

function undoNotes({ recordedWith }: SetRequest): object {
  return recordedWith ? { undo: { maxBoostDb: MAX_BOOST_DB, unknown: UNKNOWN_FROM_A_RECORDING } } : {};
}

/** How a phrase was played, the usual way named too. */
function playingOf(signal: SetRequest["signal"]): object {
  if (!("name" in signal) || isTestSignal(signal.name)) return {};
  return { hand: signal.hand ?? DEFAULT_HAND, strings: signal.strings ?? DEFAULT_STRING_AGE };
}

/** What every sound of an archive is heard through, with the figures of it. */
function listeningTold({ listening }: SetRequest): object {
  if (!listening) return { chain: "none" };
  const { amplifier, speaker } = CHAIN_FIGURES;
  return {
    chain: "clean",
    drive: listening.drive,
    cabinet: listening.cabinet ? "own" : "stated",
    amplifier,
    ...(listening.cabinet ? {} : { speaker }),
    note: "heard after the circuit; in no curve",
  };
}

/** What the sounds of an archive cannot say about themselves. */
export function manifestOf(
  request: SetRequest,
  batch: SetBatch,
  rows: readonly SettingRow[],
  assumedPlaces: readonly string[],
): object {
  const { signal, level, encoding, noise } = request;
  return {
    title: request.build.title,
    signal: "name" in signal ? signal.name : "a file of one's own",
    ...playingOf(signal),
    level,
    encoding,
    ...(noise === undefined ? {} : { noise: noiseWords(noise) }),
    ...(noise?.isCoilsOnly ? { hum: noise.mainsHz } : {}),
    listening: listeningTold(request),
    sampleRateHz: batch.sampleRateHz,
    delaySamples: batch.delaySamples,
    fullScale: "1.0 is 1 V at gainDb 0",
    ...(assumedPlaces.length > 0 && "name" in signal ? { placesAssumed: assumedPlaces } : {}),
    ...undoNotes(request),
    previews: rows.map(({ settings, setting, label, position, tone, volume }, index) => {
      const { gainDb, lufs, truePeakDbtp } = batch.levels[index]!;
      return {
        file: fileName(index, setting, rows.length, request.listening),
        settings,
        setting,
        label,
        position,
        tone,
        volume,
        gainDb: rounded(gainDb, 3),
        lufs: rounded(lufs, 2),
        truePeakDbtp: rounded(truePeakDbtp, 2),
        ...(request.recordedWith ? { limits: batch.limits[index] } : {}),
      };
    }),
  };
}
