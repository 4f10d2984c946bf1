import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { withScreenedWires } from "../../../src/listening/noise/changed-build.ts";
import { AS_DRAWN, Guitar } from "../../../src/listening/noise/guitar.ts";
import { USUAL_ROOM } from "../../../src/listening/noise/room.ts";
import { routesOf } from "../../../src/listening/noise/routes.ts";
import { faradsPerMetreOver } from "../../../src/listening/noise/runs.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const ROOM = { mainsHz: 50, room: USUAL_ROOM } as const;
const OHMS = 10_000;

/** A pickup that is next to a resistor, on a hot wire of 15 cm and a ground wire of 15 cm; its leads leave it 35 mm above its middle. */
function straight(hot: object = {}, pickup: object = {}): Build {
  const coil = { resistance: OHMS, inductance: 1e-6, capacitance: 0 };
  return readBuild({
    presolder: 1,
    parts: {
      pickup: { kind: "pickup", coils: { coil }, place: { x: 0.0025, y: -0.035 }, ...pickup },
      jack: { kind: "jack", place: { x: 0, y: 0.15 } },
    },
    wires: [{ from: "pickup.hot", to: "jack.tip", ...hot }, ["pickup.ground", "jack.sleeve"]],
    load: { resistance: 1e12 },
  });
}

function runs(build: Build, laid = AS_DRAWN): number {
  return Math.hypot(...new Guitar(build, laid).humIn(new Controls(build).atRest, ROOM)[0]!.runs);
}

describe("a wire in the room's electric field", () => {
  it("drives the current of its own capacitance into what it hangs on: 2πf·C'·h·E·length·R", () => {
    // 2πε₀ / arcosh(h/a) of a wire of 0.64 mm 2 cm over ground (textbook).
    const perMetre = (2 * Math.PI * 8.8541878128e-12) / Math.acosh(0.02 / 0.32e-3);
    const expected = 2 * Math.PI * 50 * perMetre * 0.02 * USUAL_ROOM.electricField * 0.15 * OHMS;
    expect(runs(straight()) / expected).toBeCloseTo(1, 4);
    expect(faradsPerMetreOver(0.02)).toBeCloseTo(perMetre, 18);
  });

  // The ground wire, reached as ever, is ten milliohms.
  it("is not reached inside a screen, in a braided lead or behind a cavity's foil", () => {
    expect(runs(straight({ kind: "screened", length: "15cm" }))).toBeLessThan(1e-12);
    expect(runs(straight({}, { metal: "braid" }))).toBeLessThan(1e-12);
    expect(runs(straight(), { ...AS_DRAWN, isCavityScreened: true })).toBe(0);
  });

  it("is picked up less on a wire that is nearer ground, as the volume goes to nothing", () => {
    const build = readBuild(onePickup());
    const at = (volume: number) => {
      const guitar = new Guitar(build);
      const { dials, switches } = new Controls(build).atRest;
      return Math.hypot(...guitar.humIn({ dials: { ...dials, volume }, switches }, ROOM)[0]!.runs);
    };
    expect(at(0)).toBeLessThan(at(10) / 100);
    // Half way down the jack hangs on tens of kilohms, and takes up more than on the pickup.
    expect(at(6)).toBeGreaterThan(at(10));
  });
});

describe("screened wire in place of open wire", () => {
  it("takes the signal wires' pick-up away and brings its capacitance", () => {
    const build = readBuild(onePickup());
    const screened = withScreenedWires(build, routesOf(build, AS_DRAWN));
    expect(runs(screened)).toBeLessThan(runs(build) / 3);
    const kinds = screened.wires.map((wire) => ("kind" in wire ? wire.kind : undefined));
    expect(kinds).toContain("screened");
    // The wire from case to sleeve is ground already.
    expect(kinds[build.wires.findIndex(({ to }) => to === "jack.sleeve")]).toBeUndefined();
  });
});
