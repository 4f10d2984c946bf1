import type { Settings } from "../build-file/settings.ts";
import { impulseResponses, type TransferFunction } from "../filter/impulse-response.ts";
import type { ResponseEngine } from "../response/engine.ts";
import type { Transfers } from "../response/transfers.ts";
import { boundedUndo } from "./undo.ts";

/** Look-ahead of a filter that undoes a circuit: its answer before the cause has died away within it. */
export const UNDO_LOOK_AHEAD_SECONDS = 0.05;

export interface FilterSet {
  /** One filter per input: first the drive's, if there is one, then each coil's. All have the same delay. */
  readonly taps: readonly Float64Array[];
  readonly delaySamples: number;
}

export interface FilterPlan {
  readonly engine: ResponseEngine;
  readonly sampleRateHz: number;
  readonly hasDrive: boolean;
  readonly hasCoils: boolean;
  /** Total transfer of the circuit that the drive was recorded with. */
  readonly recordedThrough?: TransferFunction | undefined;
}

/** Each coil's own transfer; all are asked at the same frequencies in turn, and solved once. */
function perCoil(transfers: Transfers): TransferFunction[] {
  let frequencies: Float64Array | undefined;
  let spectra: ReturnType<Transfers["perSource"]> = [];
  const solve = (frequenciesHz: Float64Array) => {
    const same = frequencies?.length === frequenciesHz.length && frequencies[1] === frequenciesHz[1];
    if (!same) spectra = transfers.perSource(frequenciesHz);
    frequencies = frequenciesHz;
    return spectra;
  };
  return transfers.sources.map((_, index) => (frequenciesHz) => solve(frequenciesHz)[index]!);
}

/** The filters of one setting. */
export function filtersIn(plan: FilterPlan, settings: Settings): FilterSet {
  const { engine, sampleRateHz, recordedThrough } = plan;
  const transfers = engine.transfersIn(settings);
  const total: TransferFunction = (frequenciesHz) => transfers.total(frequenciesHz);
  const wanted = [
    ...(plan.hasDrive ? [recordedThrough ? boundedUndo(total, recordedThrough) : total] : []),
    ...(plan.hasCoils ? perCoil(transfers) : []),
  ];
  const lookAheadSamples = recordedThrough ? Math.round(UNDO_LOOK_AHEAD_SECONDS * sampleRateHz) : 0;
  const responses = impulseResponses(wanted, sampleRateHz, { lookAheadSamples });
  return { taps: responses.map(({ taps }) => taps), delaySamples: responses[0]?.delaySamples ?? 0 };
}
