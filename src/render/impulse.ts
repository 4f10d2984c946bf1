import { encodeWav } from "../audio/wav-encode.ts";
import { nearestWord } from "../build-file/nearest.ts";
import type { Build } from "../build-file/schema.ts";
import type { Settings } from "../build-file/settings.ts";
import { faultAt } from "../errors.ts";
import { impulseResponse, type TransferFunction } from "../filter/impulse-response.ts";
import { ResponseEngine } from "../response/engine.ts";
import { expectPickups } from "./feed.ts";
import { UNDO_LOOK_AHEAD_SECONDS } from "./filters.ts";
import { boundedUndo, isSilent, type UndoLimit, undoLimits } from "./undo.ts";

export interface ImpulseRequest {
  readonly build: Build;
  readonly settings: Settings;
  readonly sampleRateHz: number;
  /** "pickup.coil", or the pickup's name where it has one coil: this coil's own transfer instead of all coils together. */
  readonly coil?: string | undefined;
  /** The circuit to divide by: what is left turns a recording through `over` into one through `build`. */
  readonly over?: { readonly build: Build; readonly settings: Settings } | undefined;
}

export interface ImpulseAnswer {
  /** Float32, V/V. */
  readonly wav: Uint8Array;
  readonly delaySamples: number;
  readonly limits: readonly UndoLimit[];
}

function coilIndex(engine: ResponseEngine, name: string): number {
  const { sources } = engine;
  const full = sources.map(({ pickup, coil }) => `${pickup}.${coil}`);
  const alone = sources.filter(({ pickup }) => pickup === name);
  const index = alone.length === 1 ? sources.indexOf(alone[0]!) : full.indexOf(name);
  if (index >= 0) return index;
  const near = nearestWord(name, full);
  const hint = near === undefined ? "" : `; did you mean "${near}"?`;
  const message = `there is no coil "${name.slice(0, 60)}"; expected one of ${full.join(", ")}${hint}`;
  throw faultAt("REQUEST_INVALID", "coil", message);
}

function transferOf({ build, settings, coil }: Pick<ImpulseRequest, "build" | "settings" | "coil">): TransferFunction {
  const engine = new ResponseEngine(build);
  expectPickups(engine.sources);
  const transfers = engine.transfersIn(settings);
  if (coil === undefined) return (frequenciesHz) => transfers.total(frequenciesHz);
  const index = coilIndex(engine, coil);
  return (frequenciesHz) => transfers.perSource(frequenciesHz)[index]!;
}

/**
 * A setting's filter as a WAV that any convolver takes, kept `delaySamples` late.
 * @throws PresolderError REQUEST_INVALID for an unknown coil, SOUND_UNUSABLE where there is no pickup or `over` is silent
 */
export function renderImpulse(request: ImpulseRequest): ImpulseAnswer {
  const { sampleRateHz, over } = request;
  const wanted = transferOf(request);
  const old = over && transferOf(over);
  if (old && isSilent(old))
    throw faultAt("SOUND_UNUSABLE", "over", "lets nothing through in these settings, so there is nothing to divide by");
  const lookAheadSamples = old ? Math.round(UNDO_LOOK_AHEAD_SECONDS * sampleRateHz) : 0;
  const transfer = old ? boundedUndo(wanted, old) : wanted;
  const { taps, delaySamples } = impulseResponse(transfer, sampleRateHz, { lookAheadSamples });
  const wav = encodeWav({ sampleRateHz, channels: [Float32Array.from(taps)] }, "float32");
  return { wav, delaySamples, limits: old ? undoLimits(wanted, old) : [] };
}
