import { sideOf } from "../../../bench/sheet/wire/colours.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { SheetAnswer } from "../../../contract/bench/bench.ts";
import { layGuard } from "../laid-guard.ts";
import type { SceneInput } from "./scene-lines.ts";
import { Schedule } from "./schedule.ts";

/** What all pictures of a sheet have in common; pots are soldered from behind, and so they are seen from there. */
export function picturing(build: Build, sheet: Pick<SheetAnswer, "sittings" | "pieces">): SceneInput {
  const side = sideOf(build);
  return {
    schedule: new Schedule(sheet),
    laid: layGuard(build, "back"),
    isGround: (lug) => side(lug).side === "ground",
  };
}
