import { describe, expect, it } from "vitest";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { type Ratios, seriesResistor } from "../../../src/measure/impedance/series-resistor.ts";
import { minus, ONE, ratio, type Uncertain } from "../../../src/measure/impedance/uncertain.ts";

const COIL = { resistance: 6600, inductance: 2.6, capacitance: 110e-12, loss: 1e6 };
const FREQUENCIES_HZ = Array.from({ length: 200 }, (_, k) => 80 * 2 ** (k / 25));
const exact = (re: number, im = 0): Uncertain => ({ re, im, sd: 0 });
const plus = (a: Uncertain, b: Uncertain) => minus(a, minus(exact(0), b));
const across = (a: Uncertain, b: Uncertain) => ratio(a, plus(ONE, ratio(a, b)));

const coils = FREQUENCIES_HZ.map((hz) => exact(...(Object.values(coilImpedance(COIL, hz)) as [number, number])));
/** The input of a recording interface: 1 MΩ beside 160 pF. */
const inputs = FREQUENCIES_HZ.map((hz) => across(exact(1e6), exact(0, -1 / (2 * Math.PI * hz * 160e-12))));
const GAIN = exact(0.97, 0.04);
const GROUND = exact(3);

/** What two channels show of `of` behind a resistor, the second loaded by its own input, over a ground lead. */
function shown(of: readonly (Uncertain | undefined)[], resistorOhms: number): Ratios {
  return of.map((z, i) => {
    const behind = z ? across(plus(z, GROUND), inputs[i]!) : inputs[i]!;
    const share = ratio(behind, plus(behind, exact(resistorOhms)));
    return { re: share.re * GAIN.re - share.im * GAIN.im, im: share.re * GAIN.im + share.im * GAIN.re, sd: 0 };
  });
}

function peakOf(impedances: readonly Uncertain[]) {
  const sizes = impedances.map(({ re, im }) => Math.hypot(re, im));
  const top = sizes.indexOf(Math.max(...sizes));
  return { hz: FREQUENCIES_HZ[top]!, ohms: sizes[top]! };
}

describe("an impedance behind a resistor", () => {
  const gain = FREQUENCIES_HZ.map(() => GAIN);
  it.each([10e3, 470e3])("comes out exactly behind %d ohms once gain, input and ground lead are known", (ohms) => {
    const rig = {
      gain,
      open: shown(
        coils.map(() => undefined),
        ohms,
      ),
      short: shown(
        coils.map(() => exact(0)),
        ohms,
      ),
    };
    const found = seriesResistor(shown(coils, ohms), ohms, rig);
    for (const [i, z] of found.entries()) {
      expect(
        Math.hypot(z.re - coils[i]!.re, z.im - coils[i]!.im) / Math.hypot(coils[i]!.re, coils[i]!.im),
      ).toBeLessThan(1e-9);
    }
  });

  it("reads a resonance of 9.4 kHz and 790 kΩ as 6.0 kHz and 375 kΩ where the input is not taken out", () => {
    expect(peakOf(coils).hz).toBeCloseTo(9381, -3);
    const found = peakOf(seriesResistor(shown(coils, 470e3), 470e3, { gain }));
    expect(Math.abs(found.hz / 6007 - 1)).toBeLessThan(0.03);
    expect(Math.abs(found.ohms / 375e3 - 1)).toBeLessThan(0.03);
  });

  it("tells by how much it is off with each ratio, however near the input's own impedance is to it", () => {
    const [ohms, sd] = [470e3, 1e-6];
    const measured = shown(coils, ohms);
    const open = shown(
      coils.map(() => undefined),
      ohms,
    );
    const off = (ratios: Ratios, re: number, im: number) =>
      ratios.map((each) => ({ ...each, re: each.re + re, im: each.im + im }));
    const exactly = seriesResistor(measured, ohms, { open });
    const unsure = (ratios: Ratios) => ratios.map((each) => ({ ...each, sd }));
    const cases = [
      [seriesResistor(unsure(measured), ohms, { open }), seriesResistor(off(measured, sd, 0), ohms, { open })],
      [
        seriesResistor(measured, ohms, { open: unsure(open) }),
        seriesResistor(measured, ohms, { open: off(open, 0, sd) }),
      ],
    ] as const;
    for (const [stated, moved] of cases)
      for (const [i, z] of exactly.entries())
        expect(Math.hypot(moved[i]!.re - z.re, moved[i]!.im - z.im) / stated[i]!.sd).toBeCloseTo(1, 2);
  });

  it("tells by how much it may be off: a tenth of a decibel is 11 % at the peak with 100 kΩ and 3 % with 470 kΩ", () => {
    const share = 10 ** (0.1 / 20) - 1;
    const errorAtPeak = (ohms: number) => {
      const ratios = coils
        .map((z) => ratio(z, plus(z, exact(ohms))))
        .map((t) => ({ ...t, sd: share * Math.hypot(t.re, t.im) }));
      const found = seriesResistor(ratios, ohms, {});
      const top = found.reduce((best, z) => (Math.hypot(z.re, z.im) > Math.hypot(best.re, best.im) ? z : best));
      return top.sd / Math.hypot(top.re, top.im);
    };
    expect(errorAtPeak(100e3)).toBeCloseTo(0.11, 1);
    expect(errorAtPeak(470e3)).toBeCloseTo(0.03, 2);
    expect(errorAtPeak(10e3)).toBeGreaterThan(0.8);
  });
});
