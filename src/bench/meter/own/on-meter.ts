import type { Build } from "../../../build-file/schema.ts";
import type { ReadingPlan } from "../reading-plan.ts";
import type { Reading } from "../reading-taker.ts";
import { displayOf, rangeWords } from "./display.ts";
import { widened } from "./meter-error.ts";
import type { OwnMeter } from "./own-meter.ts";
import { rangeFor } from "./range-for.ts";
import { Settler, type Settling } from "./settling.ts";

/** Less than this passes while a person looks up at the display. */
const LOOKING_UP_SECONDS = 0.5;
/** A meter that finds its range looks about three times a second (common practice, no source). */
const LOOKS_SECONDS = 0.35;
/** A needle that jumps by less is not seen to. */
const SEEN_KICK = 0.03;

/** Rather a little long: to a tenth of a second, above one to half a second. */
function roundedUp(seconds: number): number {
  const step = seconds < 1 ? 0.1 : 0.5;
  return Number((Math.ceil(seconds / step) * step).toFixed(1));
}

function waitWords(meter: OwnMeter, { seconds, kick }: Settling): string[] {
  const waits = seconds > LOOKING_UP_SECONDS;
  return [
    ...(waits ? [`wait ${roundedUp(seconds)} s until it stands still`] : []),
    ...(meter.ranging === "auto" && meter.range === undefined && seconds > LOOKS_SECONDS
      ? ["it goes through its ranges meanwhile"]
      : []),
    ...(meter.ranging === "needle" && kick > SEEN_KICK
      ? [`the needle first jumps by ${Math.round(100 * Math.min(1, kick))} % of its arc`]
      : []),
  ];
}

/** A track's end in good order reads ohms, and one that data sheets just allow kilohms: too much for the range of the first. */
function endWords(meter: OwnMeter, { potEndUnder, high }: Reading, range: number): string[] {
  if (potEndUnder === undefined || high === null || meter.ranging === "auto" || meter.range !== undefined) return [];
  const next = rangeFor(meter, high);
  return next > range ? [`above that go up, to ${rangeWords(meter, next)}`] : [];
}

/** Shows readings of one build as a person's own meter shows them. */
export class MeterFace {
  readonly #meter: OwnMeter;
  readonly #settler: Settler;

  constructor(build: Build, meter: OwnMeter) {
    this.#meter = meter;
    this.#settler = new Settler(build, meter);
  }

  /** The reading as the meter may show it, its error and its last digit granted. */
  show(plan: ReadingPlan, reading: Reading): Reading {
    const meter = this.#meter;
    const display = displayOf(meter, reading.ohms);
    const settling = this.#settler.settle(plan, reading.ohms, display.range);
    const words = [...endWords(meter, reading, display.range), ...(settling ? waitWords(meter, settling) : [])];
    const wait = settling && settling.seconds > LOOKING_UP_SECONDS ? settling.seconds : null;
    return {
      ...reading,
      ...widened(meter, reading),
      meter: { ...display, text: [display.text, ...words].join("; "), wait },
    };
  }
}
