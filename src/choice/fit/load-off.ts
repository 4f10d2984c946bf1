import type { Across } from "./coil-model.ts";
import type { RatioSweep } from "./loaded-ratio.ts";

/** A part of a load that is told within a tolerance: which sweep's it is. */
interface LoadPart {
  readonly sweep: number;
  readonly of: "resistance" | "capacitance";
  /** Standard deviation of its logarithm. */
  readonly deviation: number;
}

/** Evenly within a tolerance is as wide as a normal law of this share of it. */
const EVEN = 1 / Math.sqrt(3);

const isThere = (load: Across, of: LoadPart["of"]) =>
  of === "resistance" ? Number.isFinite(load.resistance) : load.capacitance > 0;

/** What of the loads is known to a tolerance, each part for itself. */
export function loadParts(sweeps: readonly RatioSweep[]): LoadPart[] {
  return sweeps.flatMap(({ load, tolerance = 0 }, sweep) =>
    (["resistance", "capacitance"] as const)
      .filter((of) => tolerance > 0 && isThere(load, of))
      .map((of) => ({ sweep, of, deviation: tolerance * EVEN })),
  );
}

/** Sweeps whose loads are off by so much. @param logs of each part in turn, what it is over what was told */
export function withLoadsOff(
  sweeps: readonly RatioSweep[],
  parts: readonly LoadPart[],
  logs: ArrayLike<number>,
): readonly RatioSweep[] {
  if (parts.length === 0) return sweeps;
  const loads = sweeps.map(({ load }) => ({ ...load }));
  for (const [k, { sweep, of }] of parts.entries()) loads[sweep]![of] *= Math.exp(logs[k]!);
  return sweeps.map((sweep, i) => ({ ...sweep, load: loads[i]! }));
}
