import { describe, expect, it } from "vitest";
import { editBuild } from "../../../../src/bench/faults/edits/edit-build.ts";
import { editModel } from "../../../../src/bench/faults/edits/edit-model.ts";
import { withSpareJoint } from "../../../../src/bench/faults/edits/spare-joint.ts";
import { guardWiringOf } from "../../../../src/bench/faults/kinds/guard-wiring.ts";
import { resistivePlaces } from "../../../../src/bench/faults/kinds/resistive-joints.ts";
import { singleFaults } from "../../../../src/bench/faults/kinds/single-faults.ts";
import { meterModelOf, meterStateOf } from "../../../../src/bench/meter/meter-model.ts";
import { NOT_SWEPT, Ohmmeter } from "../../../../src/bench/meter/ohmmeter.ts";
import { standingReadings } from "../../../../src/bench/meter/standing-readings.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { DirectCurrent } from "../../../../src/network/direct-current.ts";
import { CircuitMaker } from "../../../../src/response/circuit.ts";
import { threeSingles } from "../../../fixtures/circuits.ts";
import { withIdealPots } from "../../../ideal-pots.ts";
import { scenarioBuilds } from "../../scenario-builds.ts";

const FEW = 40;
const JOINT_OHMS = 700;

describe("a fault put into the lean model", () => {
  it.each(scenarioBuilds)("reads as the same fault put into the build and solved in general: $name", (scenario) => {
    // What is left at the ends of tracks is a joint to a meter, and no part of the lean model.
    const build = withIdealPots(scenario.build);
    const model = withSpareJoint(meterModelOf(build, 20));
    const plans = standingReadings(build).filter(({ sweep }) => sweep === undefined);
    const joints = resistivePlaces(guardWiringOf(build)).flatMap((place) => place.faults(JOINT_OHMS));
    const all = [...singleFaults(build), ...joints];
    const step = Math.max(1, Math.floor(all.length / FEW));
    for (const fault of all.filter((_, index) => index % step === 0)) {
      const meter = new Ohmmeter(model);
      const edited = editModel(model, fault.edits);
      const maker = new CircuitMaker(editBuild(build, fault.edits));
      for (const [index, { between, settings }] of plans.entries()) {
        if (index % 3 !== 0) continue;
        const [from, to] = between.map((lug) => model.parts.lugs.indexOf(lug)) as [number, number];
        const lean = meter.measure(edited, meterStateOf(edited, settings), { from, to, sweptTrack: NOT_SWEPT }, 0);
        const circuit = maker.circuitIn(settings, { withCableAndLoad: false });
        const node = (lug: string) => circuit.nodeOfLug(maker.wiring.lugs.indexOf(lug));
        const general = new DirectCurrent(circuit.network).resistanceBetween(node(between[0]), node(between[1]));
        const what = `${fault.kind} ${fault.lugs} at ${between}`;
        // A broken coil keeps a teraohm in the build, for the same reason.
        if (general === null || general > 1e9) expect(lean, what).toBe(Number.POSITIVE_INFINITY);
        // A shorted coil keeps a milliohm in the build, which knows no coil without resistance.
        else expect(Math.abs(lean - general), what).toBeLessThan(0.01 + 1e-6 * general);
      }
    }
  });
});

describe("the faults of a build", () => {
  const faults = singleFaults(readBuild(threeSingles()));
  const kinds = new Set(faults.map(({ kind }) => kind));

  it("are of every kind that its parts allow", () => {
    expect([...kinds].sort()).toEqual([
      "cable-bad",
      "cap-open",
      "cap-shorted",
      "cap-ten-times",
      "cap-tenth",
      "coil-open",
      "coil-shorted",
      "contact-open",
      "jack-spring",
      "jack-swapped",
      "joint-open",
      "lead-on-wrong-net",
      "leads-swapped",
      "lugs-shorted",
      "outer-lugs-swapped",
      "pickup-microphonic",
      "pickups-swapped",
      "pot-loose",
      "pot-lugs-swapped",
      "pot-scratchy",
      "shorted-to-case",
      "switch-wires-swapped",
      "switch-worn",
      "wire-loose",
      "wire-open",
      "wrong-pot-value",
      "wrong-switch-lug",
    ]);
  });

  it("name every wire once, and no short between lugs that wires join already", () => {
    expect(faults.filter(({ kind }) => kind === "wire-open")).toHaveLength(17);
    const shorts = faults.filter(({ kind }) => kind === "shorted-to-case").map(({ lugs }) => lugs.join());
    expect(shorts).not.toContain("volume.1,volume.case");
    expect(shorts).toContain("volume.2,volume.case");
  });

  it("keep a cover's jumper in place when the outgoing leads change places", () => {
    const file = threeSingles({ wires: [["bridge.shield", "bridge.ground"]] });
    const build = readBuild(file);
    const swap = singleFaults(build).find(({ kind, lugs }) => kind === "leads-swapped" && lugs[0] === "bridge.hot")!;
    const wires = editBuild(build, swap.edits).wires.map(({ from, to }) => `${from} ${to}`);
    expect(wires).toContain("bridge.shield bridge.ground");
    expect(wires).toContain("bridge.ground lever.A1");
    expect(wires).toContain("bridge.hot volume.case");
  });
});
