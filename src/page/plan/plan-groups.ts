import type { PlanFieldAnswer as PlanField } from "../../contract/recognise.ts";

export interface PlanGroup {
  readonly title: string;
  readonly options: readonly string[];
  /** Whether it stands open; the rest is folded until it is wanted. */
  readonly isOpen: boolean;
}

/** The plan's options in the order in which a guard is thought up. */
export const PLAN_GROUPS: readonly PlanGroup[] = [
  { title: "Switch and pickups", options: ["layout", "pickups"], isOpen: true },
  { title: "Tone", options: ["tones", "sharedCap", "toneFeed"], isOpen: true },
  { title: "Volume", options: ["volume", "independentVolumes", "trebleBleed"], isOpen: true },
  {
    title: "Splits, series, phase",
    options: ["split", "seriesParallel", "phase", "seriesLink", "alwaysOn"],
    isOpen: true,
  },
  { title: "Resistors, grounds, shielding", options: ["resistors", "grounds", "shield"], isOpen: false },
];

export function fieldsIn(group: PlanGroup, fields: readonly PlanField[]): PlanField[] {
  return fields.filter(({ option }) => group.options.includes(option));
}
