import { layoutOf } from "../../../build-file/plans/layouts.ts";
import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";

const POSITIONS = { "lever-5": 5, "lever-3": 3, "lever-3-pair": 3, "toggle-3": 3, none: 1 } as const;

/** What the switch with the most positions has. */
export const MOST_POSITIONS = Math.max(...Object.values(POSITIONS));

/** How many positions a plan's main switch has. */
export function positionsOf({ layout }: Pick<PlanInput, "layout">): number {
  return POSITIONS[layoutOf(layout).selector];
}
