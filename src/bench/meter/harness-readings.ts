import { trackLugs } from "../../build-file/lug-names.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { type Controls, withControl } from "../../build-file/settings.ts";
import { pickupPlaces } from "../harness/pickup-places.ts";
import { mainPositions } from "../main-positions.ts";
import type { ReadingPlan } from "./reading-plan.ts";

const DIALS = [0, 5, 10];

/** Every place of a pickup to the tip in every position: near nothing where the position lets it in, open where not. */
function placesToTip(build: Build, controls: Controls, tip: string): ReadingPlan[] {
  return mainPositions(controls).flatMap(({ settings, label }) =>
    pickupPlaces(build).map((lug) => ({
      label: `${lug} to jack tip${label === "" ? "" : `, ${label}`}`,
      between: [lug, tip] as const,
      settings,
    })),
  );
}

/** Every pot from its counter-clockwise end to its wiper, at both ends of its turn and halfway: which lug is which, and its taper. */
function dialReadings(build: Build, controls: Controls): ReadingPlan[] {
  return partsOfKind(build, "pot").flatMap(([name]) => {
    const [bottom, wiper] = trackLugs(name);
    return DIALS.map((dial) => ({
      label: `${bottom} to ${wiper}, ${name} at ${dial}`,
      between: [bottom, wiper] as const,
      settings: withControl(controls, controls.atRest, name, dial),
    }));
  });
}

/** What a harness without pickups reads, where nothing yet closes a loop through the jack. */
export function harnessReadings(build: Build, controls: Controls, tip: string): ReadingPlan[] {
  return [...placesToTip(build, controls, tip), ...dialReadings(build, controls)];
}
