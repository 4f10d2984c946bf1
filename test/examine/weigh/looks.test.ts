import { expect, it } from "vitest";
import { NOTHING } from "../../../src/examine/departures/departure.ts";
import { planFor, USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import { weighingOf } from "../../../src/examine/weigh/evidence-of.ts";
import { FIRST_FLOOR, NARROWED_FLOOR } from "../../../src/examine/weigh/floor.ts";
import { annealed } from "../../../src/examine/weigh/looks.ts";
import { effort } from "../../effort.ts";
import { seeded } from "../simulated-guard.ts";
import { trialGuards } from "../trial-guards.ts";
import { takesOf } from "../trials.ts";

const { build } = trialGuards.find(({ name }) => name === "spare-ground-wire")!;
const settings = planFor(build).map((each) => each.settings);
/** Sound guards of which one coil of a humbucker came out larger than the other, so much that one value for both does not do. */
const UNLIKE = [4, 7].slice(0, effort(1, 2));

it.each(UNLIKE)("finds both coils of a humbucker where one is larger than the other, begun alike: %d", (seed) => {
  const { weigher } = weighingOf(build, { takes: takesOf(build, [], seeded(seed), settings), rig: USUAL_RIG });
  const first = weigher.firstLook(NOTHING);
  const alike = [FIRST_FLOOR, NARROWED_FLOOR, undefined].reduce(
    (at, floor) => weigher.refined(at, floor === undefined ? {} : { floor }),
    first,
  );
  expect(alike.fit.chiSquare).toBeGreaterThan(0.9 * alike.fit.degrees);
  const found = annealed(weigher, first);
  expect(found.fit.log).toBeGreaterThan(alike.fit.log + 20);
  expect(found.fit.chiSquare).toBeLessThan(0.5 * found.fit.degrees);
});
