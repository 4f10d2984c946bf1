import type { DiagnoseRequest } from "../../bench/faults/diagnose-request.ts";
import type { Fault } from "../../bench/faults/fault.ts";
import { type MeterJudge, meterJudge } from "../../bench/faults/judge.ts";
import type { Build } from "../../build-file/schema.ts";

const SECONDS = 5;

/** What a meter's readings say of every fault, as /api/diagnose weighs them. */
export class MeterReadings {
  readonly judge: MeterJudge;
  readonly #known = new Map<string, number>();

  /** @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault */
  constructor(build: Build, request: DiagnoseRequest) {
    this.judge = meterJudge(build, request);
  }

  /** How many departures the readings may be asked about; some seconds' worth. */
  get most(): number {
    return this.judge.plans.length === 0 ? Number.POSITIVE_INFINITY : SECONDS * this.judge.affordable;
  }

  /** ln P(readings | these faults). */
  log(faults: readonly Fault[]): number {
    if (this.judge.plans.length === 0) return 0;
    const key = JSON.stringify(faults.flatMap(({ edits }) => edits));
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const { weigher } = this.judge;
    const { log } = weigher.refined(weigher.weigh(faults)).evidence;
    this.#known.set(key, log);
    return log;
  }
}
