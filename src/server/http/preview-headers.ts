import { chainSuffix, chainWords } from "../../listening/names.ts";
import { noiseWords } from "../../listening/noise/words.ts";
import type { Preview } from "../../render/preview.ts";
import type { RenderRequest } from "../../render/renderer.ts";
import { isTestSignal } from "../../render/signals.ts";
import { MAX_BOOST_DB, UNKNOWN_FROM_A_RECORDING, type UndoLimit } from "../../render/undo.ts";
import { assumedPlaces } from "../../response/coil-places.ts";

const decibels = (value: number | null) => (value === null ? "silent" : value.toFixed(2));

function limitText({ fromHz, toHz, shortByDb }: UndoLimit): string {
  return `${Math.round(fromHz)}-${Math.round(toHz)} Hz short by up to ${shortByDb.toFixed(1)} dB`;
}

/** Where the bound on undoing a circuit holds the result back. */
export function undoHeader(limits: readonly UndoLimit[]): Record<string, string> {
  const reached = limits.length === 0 ? "nowhere reached" : limits.map(limitText).join("; ");
  return { "presolder-undo-limits": `boost at most ${MAX_BOOST_DB} dB: ${reached}` };
}

/** Pickups that a phrase was heard from at the usual place, for want of the build's own. */
function placesHeader({ build, signal }: RenderRequest): Record<string, string> {
  const assumed = "name" in signal && !isTestSignal(signal.name) ? assumedPlaces(build) : [];
  return assumed.length > 0 ? { "presolder-places-assumed": assumed.join(", ") } : {};
}

/** What the sound is heard through. */
export function listeningHeader({ listening }: RenderRequest): Record<string, string> {
  return { "presolder-listening": chainWords(listening) };
}

/** What a WAV cannot say about itself. */
export function previewHeaders(request: RenderRequest, preview: Preview): Record<string, string> {
  const undone = request.recordedWith !== undefined;
  return {
    "presolder-gain-db": preview.gainDb.toFixed(2),
    "presolder-lufs": decibels(preview.lufs),
    "presolder-true-peak-dbtp": decibels(preview.truePeakDbtp),
    "presolder-delay-samples": String(preview.delaySamples),
    "content-disposition": `inline; filename="preview${chainSuffix(request.listening)}.wav"`,
    ...listeningHeader(request),
    ...(request.noise ? { "presolder-noise": noiseWords(request.noise) } : {}),
    ...placesHeader(request),
    ...(undone ? { ...undoHeader(preview.limits), "presolder-undo-unknown": UNKNOWN_FROM_A_RECORDING } : {}),
  };
}
