import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";
import { parseQuantity } from "../../../build-file/quantity.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { listed } from "../../../english.ts";

type Written = number | string;

function shown(written: Written, dimension: "resistance" | "capacitance"): string {
  return showQuantity(typeof written === "number" ? written : parseQuantity(written, dimension).value, dimension);
}

const potOf = (volume: Written | { readonly pot: Written }) => (typeof volume === "object" ? volume.pot : volume);

function bleedWords({ trebleBleed }: PlanInput): string {
  if (!trebleBleed) return "no treble bleed";
  const { capacitance, parallel, series } = trebleBleed;
  const resistor = parallel ?? series;
  const way = parallel === undefined ? "in line with" : "beside";
  const beside = resistor === undefined ? "" : ` ${way} ${shown(resistor, "resistance")}`;
  return `treble bleed ${shown(capacitance, "capacitance")}${beside}`;
}

/** A plan's pots, caps and treble bleed, those that are alike once. */
export function valueWords(plan: PlanInput): string[] {
  const volumes = plan.volumes ?? (plan.volume === undefined ? [] : [plan.volume]);
  const pots = [...new Set(volumes.map((each) => shown(potOf(each), "resistance")))];
  const tones = [
    ...new Set(
      (plan.tones ?? []).map(({ pot, cap }) => {
        const farads = cap ?? plan.sharedCap;
        return `${shown(pot, "resistance")}${farads === undefined ? "" : ` with ${shown(farads, "capacitance")}`}`;
      }),
    ),
  ];
  return [`volume ${listed(pots)}`, tones.length === 0 ? "no tone" : `tone ${listed(tones)}`, bleedWords(plan)];
}
