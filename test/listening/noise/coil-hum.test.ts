import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { Guitar } from "../../../src/listening/noise/guitar.ts";
import { roomLines, USUAL_ROOM } from "../../../src/listening/noise/room.ts";
import { turnsArea } from "../../../src/listening/noise/turns-area.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { humLevelDb } from "../../../src/response/hum.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

const REFERENCE = turnsArea({ inductance: 2.4 });

describe("the hum of coils in volts", () => {
  it.each(scenarioBuilds)(
    "$name: is the hum that curves and tables tell, times that of one usual coil",
    ({ build }) => {
      const controls = new Controls(build);
      const main = controls.main ? { [controls.main.name]: controls.main.table.positions.map((_, at) => at + 1) } : {};
      const [guitar, engine] = [new Guitar(build), new ResponseEngine(build)];
      for (const settings of expandSweep(controls, main)) {
        const [first] = guitar.humIn(settings, { mainsHz: 50, room: USUAL_ROOM });
        const volts = Math.hypot(...first!.coils);
        const usual = 2 * Math.PI * 50 * USUAL_ROOM.fluxDensity * REFERENCE;
        const told = humLevelDb(engine.transfersIn(settings));
        // The wires' own ohms, which only this network has, are millionths of the coils'.
        if (told > -60) expect(20 * Math.log10(volts / usual)).toBeCloseTo(told, 2);
        else expect(volts / usual).toBeLessThan(0.0011);
      }
    },
  );

  it("of the usual coil in 0.2 µT of 50 Hz is a quarter of a millivolt, 2πf·B·N·A", () => {
    expect(2 * Math.PI * 50 * 2e-7 * 8000 * 4.8e-4).toBeCloseTo(241e-6, 6);
    expect(REFERENCE).toBeCloseTo(3.84, 9);
  });
});

describe("two equal coils in parallel", () => {
  const humOf = (other: object) => {
    const coil = { resistance: "6k", inductance: "2.4H" };
    const build = readBuild({
      presolder: 1,
      parts: {
        one: { kind: "pickup", coils: { coil } },
        two: { kind: "pickup", coils: { coil: { ...coil, ...other } } },
        jack: { kind: "jack" },
      },
      wires: ["one", "two"].flatMap((name) => [
        [`${name}.hot`, "jack.tip"],
        [`${name}.ground`, "jack.sleeve"],
      ]),
    });
    const [first] = new Guitar(build).humIn(new Controls(build).atRest, { mainsHz: 60, room: USUAL_ROOM });
    return Math.hypot(...first!.coils) / (2 * Math.PI * 60 * USUAL_ROOM.fluxDensity * REFERENCE);
  };

  it.each([
    { winding: "forward", magnet: "north", left: 1 },
    { winding: "forward", magnet: "south", left: 1 },
    { winding: "reverse", magnet: "north", left: 0 },
    { winding: "reverse", magnet: "south", left: 0 },
  ] as const)("hum by their winding alone: $winding and $magnet leaves $left", ({ left, ...other }) => {
    // 1 MΩ takes 3 kΩ of it.
    expect(humOf(other)).toBeCloseTo(left, 2);
  });
});

describe("the room", () => {
  it("has its fundamental alone where harmonics are nothing", () => {
    const lines = roomLines(60, { ...USUAL_ROOM, harmonics: 0 });
    expect(lines[0]).toEqual({ hz: 60, fluxDensity: 2e-7, electricField: 10 });
    for (const { fluxDensity, electricField } of lines.slice(1)) expect([fluxDensity, electricField]).toEqual([0, 0]);
  });
});
