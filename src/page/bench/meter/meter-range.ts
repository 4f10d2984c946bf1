import type { OwnMeter } from "../../../bench/meter/own/own-meter.ts";
import { canStandOn, topRange } from "../../../bench/meter/own/range-for.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import type { MeterReadingAnswer } from "../../../contract/bench/bench.ts";
import { freshId, h, replaceContent } from "../../dom/element.ts";
import type { AppStore } from "../../state/app-state.ts";
import { meterInUse } from "./kept-meter.ts";

/** Which range the person's meter stands on. */
export interface MeterRange {
  readonly element: HTMLElement;
  /** The end of the range in ohms; undefined where what is over it is open. */
  read(reading: MeterReadingAnswer): number | undefined;
  /** The end of the range that these ohms stood on; undefined where the meter finds its own or they cannot have stood there. */
  holding(reading: MeterReadingAnswer, ohms: number): number | undefined;
}

const BY_METER = "";
const AS_TABLE = "table";
/** The ranges that matter where nobody said which meter it is. */
const USUAL_RANGES = [20e3, 200e3, 2e6];

function optionsFor(meter: OwnMeter | undefined): HTMLOptionElement[] {
  const ends = meter ? meter.ranges : USUAL_RANGES;
  const first = meter
    ? { value: AS_TABLE, text: "as the table says" }
    : { value: BY_METER, text: "chosen by the meter (auto)" };
  return [
    h("option", { value: first.value }, first.text),
    ...ends.map((end) => h("option", { value: String(end) }, showQuantity(end, "resistance"))),
  ];
}

/** Asks for the meter's range, since OL on a range says no more than "above its end". */
export function createMeterRange(store: AppStore): MeterRange {
  const id = freshId("meter-range");
  const select = h("select", { id });
  const element = h("div", { class: "field" }, h("label", { for: id }, "Meter range; OL means above it"), select);
  store.watchAny(
    ({ benchOptions }) => [benchOptions.meter],
    () => {
      const meter = meterInUse(store);
      replaceContent(select, optionsFor(meter));
      element.hidden = meter !== undefined && meter.ranging !== "manual";
    },
  );
  const chosen = ({ meter: shown }: MeterReadingAnswer) => {
    if (element.hidden || select.value === BY_METER) return undefined;
    return select.value === AS_TABLE ? shown?.range : Number(select.value);
  };
  return {
    element,
    read: (reading) => {
      const meter = meterInUse(store);
      const range = chosen(reading);
      return meter && range === topRange(meter) ? undefined : range;
    },
    holding: (reading, ohms) => {
      const meter = meterInUse(store);
      const range = chosen(reading);
      return meter && range !== undefined && canStandOn(meter, range, ohms) ? range : undefined;
    },
  };
}
