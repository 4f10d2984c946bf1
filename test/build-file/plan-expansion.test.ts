import { describe, expect, test } from "vitest";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { expandBuild } from "../../src/build-file/expand.ts";
import type { PlanInput } from "../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { BuildInput } from "../../src/build-file/schema.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { LEVER_PLAN } from "../fixtures/plans.ts";

const preset = (id: string) => PLAN_PRESETS.find((candidate) => candidate.id === id)!.plan;
const expand = (plan: PlanInput, rest: object = {}) => expandBuild({ presolder: 1, plan, ...rest });

type WireRecord = { from: string; to: string; how?: string };
const partOf = (build: BuildInput, name: string) => build.parts[name];
const wiresOf = (build: BuildInput) => build.wires as WireRecord[];
const hasWire = (build: BuildInput, a: string, b: string, how?: string) =>
  wiresOf(build).some(
    (wire) => ((wire.from === a && wire.to === b) || (wire.from === b && wire.to === a)) && wire.how === how,
  );

describe.each(PLAN_PRESETS.map(({ id }) => id))("the plan %s", (id) => {
  const long = expand(preset(id));

  test("gives the same bytes every time", () => {
    expect(JSON.stringify(expand(structuredClone(preset(id))))).toBe(JSON.stringify(long));
  });

  test("survives expand, JSON and reading, and curves the same after it", () => {
    const back = readBuild(JSON.parse(JSON.stringify(long)));
    expect(back).toEqual(parseLongForm(long));
    const again = readBuild(JSON.parse(JSON.stringify(back)));
    expect(again).toEqual(back);
    const rest = new Controls(back).atRest;
    const frequencies = Float64Array.of(100, 1000, 4000);
    const curves = [back, readBuild({ presolder: 1, plan: preset(id) })].map(
      (build) => curveOf(new ResponseEngine(build).transfersIn(rest), frequencies).magnitude,
    );
    expect(curves[0]).toEqual(curves[1]);
  });

  test("gives every part a place, a label and a wire", () => {
    const met = new Set(wiresOf(long).flatMap(({ from, to }) => [from.split(".")[0], to.split(".")[0]]));
    for (const [name, part] of Object.entries(long.parts)) {
      expect(part.place, name).toBeDefined();
      expect(part.label, name).toBeDefined();
      expect(met, name).toContain(name);
    }
  });
});

describe("a technician's wiring", () => {
  const guard = expand({
    ...LEVER_PLAN,
    toneFeed: "before-volume",
    trebleBleed: { capacitance: "680p", parallel: "150k" },
    split: { pickup: "bridge", by: "tone2", keeps: "screw" },
  });

  test.each([
    ["volume.1", "volume.case", "bent lug"],
    ["lever.A0", "lever.B0", "jumper"],
    ["cap1.b", "tone1.case", "leg"],
    ["neck.hot", "lever.A3", "lead"],
    ["neck.ground", "volume.case", "lead"],
    ["bridge.shield", "volume.case", "lead"],
    ["volume.case", "tone1.case", "bus wire"],
    ["tone1.case", "tone2.case", "bus wire"],
    ["jack.sleeve", "volume.case", undefined],
    ["volume.2", "jack.tip", undefined],
    ["claw", "volume.case", undefined],
    ["shield", "volume.case", undefined],
    ["bleed.a", "volume.3", "leg"],
    ["bleedResistor.b", "volume.2", "leg"],
    ["tone2.s.A2", "tone2.case", undefined],
  ])("joins %s to %s: %s", (a, b, how) => {
    expect(hasWire(guard, a, b, how)).toBe(true);
  });

  test("keeps quantities as they were written", () => {
    expect(partOf(guard, "cap1")).toMatchObject({ capacitance: "22n" });
    expect(partOf(guard, "volume")).toMatchObject({ resistance: "250k" });
    const written = expand(preset("singles-master-tone"), {
      title: "Guard",
      cable: { length: "10ft", capacitance: "33pF/ft" },
      load: { resistance: "1M" },
      strings: { scale: "25.5in" },
    });
    expect(written).toMatchObject({
      title: "Guard",
      cable: { length: "10ft", capacitance: "33pF/ft" },
      load: { resistance: "1M" },
      strings: { scale: "25.5in" },
    });
  });

  test("one cap serves both tones when it is shared", () => {
    const shared = expand(preset("singles-shared-cap"));
    const caps = Object.values(shared.parts).filter((part) => part.kind === "cap");
    expect(caps).toHaveLength(1);
    expect(hasWire(shared, "tone1.2", "tone2.2")).toBe(true);
  });

  test("a switch of its own has a place, a label and the wires of a push-pull", () => {
    const guard = expand({ ...preset("singles-middle-phase"), phase: { pickup: "middle", by: { switch: "flip" } } });
    expect(partOf(guard, "flip")).toMatchObject({
      kind: "switch",
      type: "dpdt",
      label: "Small switch: turns the phase of the middle",
    });
    const both = expand({
      ...preset("hsh-push-pull-splits"),
      split: ["neck", "bridge"].map((pickup) => ({ pickup, by: { switch: "flip" } })),
    });
    expect(partOf(both, "flip")).toMatchObject({ label: "Small switch: splits the neck and splits the bridge" });
    expect(partOf(guard, "flip")?.place).toBeDefined();
    expect(hasWire(guard, "middle.hot", "flip.A1", "lead")).toBe(true);
    expect(hasWire(guard, "flip.A1", "flip.B2", "jumper")).toBe(true);
    expect(hasWire(guard, "flip.A0", "lever.A2")).toBe(true);
  });

  test("a star takes every ground wire, and no case hangs on another", () => {
    const star = expand({ ...preset("humbuckers-two-volumes"), grounds: "star" });
    for (const lug of ["volume1.case", "volume2.case", "tone1.case", "tone2.case", "claw", "shield", "jack.sleeve"])
      expect(hasWire(star, lug, "star"), lug).toBe(true);
    expect(wiresOf(star).filter(({ from, to }) => from.endsWith(".case") && to.endsWith(".case"))).toEqual([]);
  });

  test("pickups move with the scale length, and a coil's own distance stands", () => {
    const short = expand(
      { layout: "one-pickup", pickups: { neck: "single-vintage" }, volume: "250k" },
      { strings: { scale: 0.61 } },
    );
    expect(partOf(short, "neck")).toMatchObject({ coils: { coil: { distance: "146.9mm" } } });
    const own = expand({
      layout: "one-pickup",
      pickups: { neck: { type: "single-vintage", coils: { coil: { distance: "140mm", resistance: "5.9k" } } } },
      volume: "250k",
    });
    expect(partOf(own, "neck")).toMatchObject({
      coils: { coil: { distance: "140mm", resistance: "5.9k", inductance: "2.5H" } },
    });
  });

  test("a single coil at the bridge of three sits aslant, of the catalogue, changed or whole; a slant of its own stands", () => {
    const coils = { coil: { resistance: "6k", inductance: "2.4H" } };
    const slanted = (bridge: PlanInput["pickups"][string]) => {
      const part = partOf(
        expand({
          ...preset("singles-three-way"),
          pickups: { neck: "single-vintage", middle: "single-vintage", bridge },
        }),
        "bridge",
      );
      if (part?.kind !== "pickup") throw new Error("no pickup");
      return Object.values(part.coils).map(({ slant }) => slant);
    };
    expect(slanted("single-vintage")).toEqual(["12mm"]);
    expect(slanted({ type: "single-vintage", coils: { coil: { resistance: "6.4k" } } })).toEqual(["12mm"]);
    expect(slanted({ type: "single-vintage", coils: { coil: { slant: "8mm" } } })).toEqual(["8mm"]);
    expect(slanted({ kind: "pickup", coils })).toEqual(["12mm"]);
    expect(slanted({ kind: "pickup", coils: { coil: { ...coils.coil, slant: 0 } } })).toEqual([0]);
    expect(slanted("humbucker-medium")).toEqual([undefined, undefined]);
    expect(slanted({ kind: "pickup", coils: { slug: coils.coil, screw: coils.coil } })).toEqual([undefined, undefined]);
  });

  test("a humbucker's two coils lie either side of its middle, the screws outermost", () => {
    const { neck, bridge } = expand(preset("humbuckers-one-volume")).parts;
    expect(neck).toMatchObject({ coils: { slug: { distance: "147mm" }, screw: { distance: "165mm" } } });
    expect(bridge).toMatchObject({ coils: { slug: { distance: "54mm" }, screw: { distance: "36mm" } } });
  });
});
