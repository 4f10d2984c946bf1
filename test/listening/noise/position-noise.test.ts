import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { usualAmplifier } from "../../../src/listening/noise/amplifier.ts";
import { Guitar } from "../../../src/listening/noise/guitar.ts";
import { type PositionNoise, positionNoise } from "../../../src/listening/noise/position-noise.ts";
import { remediesFor } from "../../../src/listening/noise/remedies.ts";
import { USUAL_ROOM } from "../../../src/listening/noise/room.ts";
import { SCENARIOS, settingsOf } from "../../render/scenario-settings.ts";

const scenario = (name: string) => SCENARIOS.find((each) => each.name === name)!.build;
const conditionsOf = (build: Parameters<typeof usualAmplifier>[0]) => ({
  mainsHz: 50 as const,
  room: USUAL_ROOM,
  kelvin: 293.15,
  amplifier: usualAmplifier(build),
});

describe("noise of a plain resistance", () => {
  const build = readBuild({
    presolder: 1,
    parts: {
      pickup: { kind: "pickup", coils: { coil: { resistance: "10k", inductance: 1e-6 } } },
      jack: { kind: "jack" },
    },
    wires: [
      ["pickup.hot", "jack.tip"],
      ["pickup.ground", "jack.sleeve"],
    ],
    load: { resistance: 1e12 },
  });
  const noise = positionNoise(new Guitar(build), new Controls(build).atRest, conditionsOf(build));

  it("is √(4kTR·Δf) from 20 Hz to 20 kHz", () => {
    const expected = Math.sqrt(4 * 1.380649e-23 * 293.15 * 10_000 * (20_000 - 20));
    expect(20 * Math.log10(noise.thermal.flat / expected)).toBeCloseTo(0, 2);
  });

  it("has 1.9 dB less A-weighted than 20 kHz of white noise", () => {
    // ∫A² from 20 Hz to 20 kHz is some 13.3 kHz, by the formula of IEC 61672-1 on a grid of 1 Hz.
    let sum = 0;
    for (let hz = 20; hz < 20_000; hz++) {
      const s = (hz + 0.5) ** 2;
      const gain =
        (1.2588966 * 12194.217 ** 2 * s * s) /
        ((s + 20.598997 ** 2) * Math.sqrt((s + 107.65265 ** 2) * (s + 737.86223 ** 2)) * (s + 12194.217 ** 2));
      sum += gain * gain;
    }
    expect((noise.thermal.weighted / noise.thermal.flat) ** 2).toBeCloseTo(sum / 19_980, 3);
  });

  it("counts the amplifier's own noise beside it, by power", () => {
    const { hiss, thermal, amplifier } = noise;
    expect(hiss.flat).toBeCloseTo(Math.hypot(thermal.flat, amplifier.flat), 12);
    // A triode's 1.6 kΩ and 34 kΩ before its grid.
    const own = Math.sqrt(4 * 1.380649e-23 * 293.15 * (1562.5 + 34_000) * 19_980);
    expect(20 * Math.log10(amplifier.flat / own)).toBeCloseTo(0, 2);
  });
});

describe("what would help against hum, each on the guard as it is", () => {
  const found = (name: string, lever: number): Record<string, PositionNoise | null> => {
    const build = scenario(name);
    const [key] = [new Controls(build).main!.name];
    const settings = settingsOf(build, { [key]: lever });
    const asDrawn = positionNoise(new Guitar(build), settings, conditionsOf(build));
    return {
      asDrawn,
      ...Object.fromEntries(
        remediesFor(build).map(({ name: remedy, guitar }) => [
          remedy,
          guitar && positionNoise(guitar, settings, conditionsOf(build)),
        ]),
      ),
    };
  };

  it("foil and screened wire take away what the electric field drives, and leave the coils' hum", () => {
    const { asDrawn, ...others } = found("tone-cap-22-or-47", 1);
    for (const remedy of ["shielded-cavity", "screened-wire"]) {
      expect(others[remedy]!.runs.flat).toBeLessThan(asDrawn!.runs.flat / 5);
      expect(others[remedy]!.coils.flat / asDrawn!.coils.flat).toBeCloseTo(1, 2);
    }
  });

  it("a humbucker's guard hums by its wires alone, and foil leaves it next to nothing", () => {
    const { asDrawn, ...others } = found("five-sounds-two-humbuckers", 1);
    expect(asDrawn!.coils.flat).toBeLessThan(asDrawn!.runs.flat / 1000);
    expect(others["shielded-cavity"]!.hum.flat).toBeLessThan(asDrawn!.hum.flat / 100);
  });

  it("no reverse-wound pickup is proposed where there is one", () => {
    expect(found("tone-cap-22-or-47", 2)["reverse-wound"]).toBeNull();
  });

  it("a middle pickup wound the other way takes the hum from the positions that pair it, and keeps the sound", () => {
    const build = readBuild({
      presolder: 1,
      plan: {
        layout: "lever-5-one-tone",
        pickups: { neck: "single-vintage", middle: "single-vintage", bridge: "single-vintage" },
        volume: "250k",
        tones: [{ pot: "250k", cap: "22n" }],
      },
    });
    const settings = settingsOf(build, { lever: 2 });
    const before = positionNoise(new Guitar(build), settings, conditionsOf(build));
    const remedy = remediesFor(build).find(({ name }) => name === "reverse-wound")!;
    const after = positionNoise(remedy.guitar!, settings, conditionsOf(build));
    expect(remedy.pickup).toBe("middle");
    expect(after.coils.flat).toBeLessThan(before.coils.flat / 1000);
    expect(after.playing.flat / before.playing.flat).toBeCloseTo(1, 6);
  });
});
