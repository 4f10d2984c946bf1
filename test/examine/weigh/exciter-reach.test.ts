import { expect, it } from "vitest";
import { departuresOf } from "../../../src/examine/departures/departures.ts";
import { Point } from "../../../src/examine/model/point.ts";
import { planFor, USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import { weighingOf } from "../../../src/examine/weigh/evidence-of.ts";
import { reachOf } from "../../../src/examine/weigh/exciter-reach.ts";
import { seeded } from "../simulated-guard.ts";
import { trialGuards } from "../trial-guards.ts";
import { takesOf } from "../trials.ts";

const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;

it.each(["neck", "bridge"])(
  "lays an exciter over what stands in for a broken coil of that pickup alone: %s",
  (laid) => {
    const takes = takesOf(build, [], seeded(1), [planFor(build)[0]!.settings]);
    const { weigher, unknowns } = weighingOf(build, { takes, rig: USUAL_RIG });
    const broken = departuresOf(build).find((each) => {
      const [fault] = each.faults([1]);
      return fault?.kind === "coil-open" && fault.lugs.some((lug) => lug.startsWith("neck."));
    })!;
    const subject = weigher.subjectAt(broken, new Point(unknowns.with(broken.added)));
    const view = subject.viewOf(0);
    const { own, shares } = reachOf(view, subject, { pickup: laid, coil: "coil" });
    const called = [...view.sources].filter(([, index]) => own.has(index)).map(([name]) => name);
    expect(called).toEqual(laid === "neck" ? ["neck.coil", "fault0.coil"] : ["bridge.coil"]);
    const far = ["neck", "middle", "bridge"].filter((pickup) => pickup !== laid);
    expect([...shares.keys()].sort()).toEqual(far.map((pickup) => `far.${laid}.coil.${pickup}.coil`).sort());
  },
);
