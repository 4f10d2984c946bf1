import type { Part, PartOf } from "../../../build-file/schema.ts";
import type { SettingValue } from "../../../build-file/settings.ts";
import { shortQuantity, showQuantity } from "../../../build-file/show-quantity.ts";

/** "250k at 7". */
export function dialText(pot: PartOf<"pot">, dial: SettingValue | undefined): string {
  return `${shortQuantity(pot.measured ?? pot.resistance)} at ${dial ?? 10}`;
}

/** What a cap or resistor is. */
export function legText(part: Part): string {
  if (part.kind === "cap") return showQuantity(part.capacitance, "capacitance");
  return part.kind === "resistor" ? showQuantity(part.resistance, "resistance") : "";
}
