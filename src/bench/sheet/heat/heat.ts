import { type Heated, heatedJoint } from "./bodies.ts";
import { flowCelsius, type Iron } from "./iron.ts";
import { heatFor } from "./thermal-model.ts";

/** How long a joint wants the iron. */
export interface Heat {
  readonly heated: Heated;
  /** Until solder flows, rounded to half a second and at least one; null where this iron never gets it there. */
  readonly seconds: number | null;
  /** °C of a pot's track and lugs by then; null where no pot is heated. */
  readonly lugCelsius: number | null;
  /** Where it has not flowed by then, stop and let it cool. */
  readonly stopAfter: number;
}

/** Nobody holds an iron on a joint for longer. */
const MAX_SECONDS = 20;
/** Shortest and longest that anybody is told to wait for solder to flow (common practice, no source). */
const STOP_SECONDS = { least: 3, most: 8 } as const;
/** The node of a case's track and lugs. */
const LUGS_NODE = 3;

const toHalves = (seconds: number) => Math.max(1, Math.round(seconds * 2) / 2);

/** Seconds to flow and the heat that a pot's lugs have taken by then, from the lumped model of `heatedJoint`. */
export function heatOf(heated: Heated, ends: number, iron: Iron): Heat {
  const goal = flowCelsius(iron);
  let seconds: number | null = null;
  const celsius = heatFor(heatedJoint(heated, ends, iron), MAX_SECONDS, (time, now) => {
    if (now[1]! < goal) return false;
    seconds = time;
    return true;
  });
  const twice = seconds === null ? STOP_SECONDS.most : Math.ceil(2 * seconds);
  return {
    heated,
    seconds: seconds === null ? null : toHalves(seconds),
    lugCelsius: heated === "case" ? Math.round(celsius[LUGS_NODE]!) : null,
    stopAfter: Math.min(STOP_SECONDS.most, Math.max(STOP_SECONDS.least, twice)),
  };
}
