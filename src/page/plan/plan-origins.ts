import type { PlanFieldAnswer as PlanField } from "../../contract/recognise.ts";
import type { Origin } from "../sources/origin.ts";
import { AUDIO_ORIGIN, usualOrigin } from "../sources/part-origin.ts";
import { typeOrigin } from "../sources/pickup-origin.ts";
import { markElement } from "../sources/where-from.ts";

function sortOf({ id, dimension }: PlanField & { kind: "quantity" }) {
  if (dimension === "capacitance") return "cap";
  return id.endsWith(".pot") ? "pot" : "resistor";
}

/** Where what an option of the plan is set to stands in the catalogue. */
export function planOrigin(field: PlanField): Origin | undefined {
  if (field.kind === "quantity") return usualOrigin(sortOf(field), field.value);
  if (field.kind !== "choice") return undefined;
  if (field.id.endsWith(".taper")) return field.value === "audio" ? AUDIO_ORIGIN : undefined;
  return field.id.startsWith("pickups.") ? typeOrigin(field.value) : undefined;
}

export function markPlan(fields: readonly PlanField[], elements: ReadonlyMap<string, HTMLElement>): void {
  for (const field of fields) {
    const element = elements.get(field.id);
    if (element) markElement(element, planOrigin(field));
  }
}
