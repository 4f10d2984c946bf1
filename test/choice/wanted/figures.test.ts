import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { tableOf } from "../../../src/choice/table.ts";
import { ABSENT_STEPS, type FigureName, stepsShort } from "../../../src/choice/wanted/figures.ts";
import { Measured } from "../../../src/choice/wanted/measured.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

function measuredOf(build: object) {
  const guard = new Guard(readBuild(build));
  const controls = new Controls(guard.build);
  const at = (raw: RawSettings = {}) => parseSettings(controls, raw);
  const main = controls.main ? controls.main.table.positions.map((_, index) => at({ lever: index + 1 })) : [at()];
  const measured = new Measured(guard, flatDrive(), main);
  const value = (figure: FigureName, raw: RawSettings = {}) =>
    measured.valueOf(figure, { settings: at(raw), together: 0 });
  return { guard, main, value };
}

const LINEAR = { kind: "pot", role: "volume", resistance: "250k", taper: "linear", endResistance: 1 };

describe("figures that wishes are measured by", () => {
  test("peak and cutoff are those of the table, loudness is the table's less its mean", () => {
    const { guard, main, value } = measuredOf(threeSingles());
    const rows = tableOf(guard, main, flatDrive());
    const mean = rows.reduce((sum, { loudness }) => sum + loudness!, 0) / rows.length;
    for (const [index, { peak, cutoff, loudness }] of rows.entries()) {
      const raw = { lever: index + 1 };
      if (peak) expect(value("peakFrequency", raw)).toBeCloseTo(peak.frequency, 3);
      else expect(value("peakFrequency", raw)).toBeNull();
      expect(value("peakHeight", raw)).toBeCloseTo(peak?.level ?? 0, 6);
      expect(value("cutoff", raw)).toBeCloseTo(cutoff!, 2);
      expect(value("loudness", raw)).toBeCloseTo(loudness! - mean, 9);
    }
  });

  test("hum is that of curves and tables: beside one usual coil; two of opposite winding leave the difference of their turns'", () => {
    const { guard, main, value } = measuredOf(threeSingles());
    for (const [index, { hum }] of tableOf(guard, main, flatDrive()).entries())
      expect(value("hum", { lever: index + 1 })).toBeCloseTo(hum!, 6);
    // What two coils in parallel give at the jack: each EMF, which goes with the root of the inductance, by its own admittance.
    const w = 2 * Math.PI * 50;
    const shares = [
      { henries: 2.6, ohms: 6300, sign: -1 },
      { henries: 2.3, ohms: 5900, sign: 1 },
    ].map(({ henries, ohms, sign }) => {
      const squared = ohms ** 2 + (w * henries) ** 2;
      const size = Math.sqrt(henries / 2.4) / squared;
      return { re: sign * size * ohms, im: -sign * size * w * henries };
    });
    const sum = Math.hypot(shares[0]!.re + shares[1]!.re, shares[0]!.im + shares[1]!.im);
    const admittance = [
      { henries: 2.6, ohms: 6300 },
      { henries: 2.3, ohms: 5900 },
    ].reduce(
      (total, { henries, ohms }) => {
        const squared = ohms ** 2 + (w * henries) ** 2;
        return { re: total.re + ohms / squared, im: total.im - (w * henries) / squared };
      },
      { re: 0, im: 0 },
    );
    // Pots, load and cable take some tenths of a decibel.
    expect(value("hum", { lever: 4 })).toBeCloseTo(20 * Math.log10(sum / Math.hypot(admittance.re, admittance.im)), 0);
  });

  test("volume at 6 takes what a plain divider takes", () => {
    // A linear track's fraction at 6 is looked up where it is drawn; here only the divider is checked.
    const { guard, value } = measuredOf(
      onePickup({
        parts: {
          volume: {
            ...LINEAR,
            taper: [
              [0, 0],
              [1, 1],
            ],
          },
        },
        rest: { load: { resistance: "1M" } },
      }),
    );
    expect(guard.controls.potsWithRole("volume")).toEqual(["volume"]);
    // 6.0 kΩ, with its reactance at 200 Hz, under a tone of 250 kΩ and 22 nF that the divider hardly sees; wiper into 1 MΩ.
    const [track, load] = [250e3, 1e6];
    const under = 1 / (1 / (0.6 * track) + 1 / load);
    const divided = under / (0.4 * track + under);
    const open = 1 / (1 / track + 1 / load);
    // What the coil loses into the track is within 0.3 dB of the same in both.
    const coil = Math.hypot(6000, 2 * Math.PI * 200 * 2.4);
    expect(coil / open).toBeLessThan(0.04);
    expect(value("volumeFall")).toBeCloseTo(20 * Math.log10(divided), 0);
  });

  test("a treble bleed turns lost treble into kept treble", () => {
    const plain = measuredOf(onePickup());
    const bled = measuredOf(
      onePickup({
        parts: { bleed: { kind: "cap", capacitance: "1n" } },
        wires: [...(onePickup() as { wires: unknown[] }).wires, ["bleed.a", "volume.3"], ["bleed.b", "volume.2"]],
      }),
    );
    expect(plain.value("volumeTreble")!).toBeLessThan(0);
    expect(bled.value("volumeTreble")!).toBeGreaterThan(plain.value("volumeTreble")! + 2);
  });

  test("where no tone knob works its travel is nothing and its half is not there; where nothing sounds there are no figures", () => {
    const { value } = measuredOf(threeSingles());
    const silent = measuredOf(onePickup({ wires: (onePickup() as { wires: unknown[] }).wires.slice(1) }));
    for (const figure of ["peakFrequency", "cutoff", "lows", "loudness", "hum", "volumeFall"] as const)
      expect(silent.value(figure)).toBeNull();
    expect(value("toneTravel", { lever: 5 })!).toBeGreaterThan(1);
    expect(value("toneHalf", { lever: 5 })!).toBeGreaterThan(0);
    expect(value("toneHalf", { lever: 5 })!).toBeLessThan(100);
  });
});

describe("steps that a target is missed by", () => {
  test.each([
    ["within", { figure: "peakHeight", low: 4, high: 9 } as const, 5, 0],
    ["at its end", { figure: "peakHeight", low: 4 } as const, 4, 0],
    ["3 dB under a height", { figure: "peakHeight", low: 4 } as const, 1, 1],
    ["an octave over a frequency, in thirds of an octave", { figure: "cutoff", high: 3500 } as const, 7000, 3],
    ["half an octave under one", { figure: "peakFrequency", low: 4000 } as const, 4000 / Math.SQRT2, 1.5],
    ["not there", { figure: "cutoff", high: 3500 } as const, null, ABSENT_STEPS],
    ["very far, which is no worse than not there", { figure: "hum", high: -1000 } as const, 0, ABSENT_STEPS],
  ])("%s", (_, range, value, steps) => {
    expect(stepsShort(range, value)).toBeCloseTo(steps, 9);
  });
});
