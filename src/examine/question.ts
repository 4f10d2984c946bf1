import type { MeasuredReading } from "../bench/faults/diagnose-request.ts";
import type { JointAge } from "../bench/faults/priors/fault-shares.ts";
import type { OwnMeter } from "../bench/meter/own/own-meter.ts";
import type { HeardTap } from "../measure/taps/hear-taps.ts";
import type { TapInput } from "../measure/taps/tap-transfers.ts";
import type { Rig } from "./model/rig-unknowns.ts";
import type { Take } from "./takes/take.ts";

/** What is known of a finished guard besides its drawing. */
export interface Question {
  readonly rig: Rig;
  readonly takes: readonly Take[];
  /** What was heard of a plan of taps. */
  readonly taps?: { readonly heard: readonly HeardTap[]; readonly input: TapInput } | undefined;
  readonly readings: readonly MeasuredReading[];
  readonly joints?: JointAge | undefined;
  /** °C of the coils while a meter read. */
  readonly temperature?: number | undefined;
  readonly meter?: OwnMeter | undefined;
}
