import { describe, expect, test } from "vitest";
import { METAL_TYPES } from "../../src/build-file/catalogue/shieldings.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { MAX_METALS } from "../../src/limits.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { emfLaw, times } from "../../src/response/emf-law.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { solvedTransfers } from "../../src/response/transfers.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { acSweeps, behindMetal, netlistOf } from "../ngspice.ts";
import { describeWith } from "../tools.ts";

const HERTZ = [500, 1000, 2000, 3000, 4000, 6000, 8000];
/** dB over a coil on alnico rods, 0 at 200 Hz: open data set strayr/pickupAnalyseR-data (CC0-1.0), reduced from its raw curves. */
const MEASURED: Readonly<Record<string, readonly number[]>> = {
  "steel-poles": [-0.3, -0.5, -0.8, -1.0, -1.2, -1.6, -1.5],
  "open-humbucker": [-0.3, -0.5, -0.9, -1.1, -1.3, -1.6, -1.2],
  "wide-single": [-0.2, -0.7, -1.6, -2.2, -2.6, -3.9, -2.7],
  "base-plate": [-0.4, -0.9, -1.7, -2.1, -2.3, -2.2, -2.3],
  "neck-cover": [-0.2, -0.8, -1.9, -3.2, -4.6, -6.8, -8.8],
  "plain-cover": [-0.4, -1.0, -2.7, -4.2, -5.9, -8.5, -8.9],
  "good-cover": [Number.NaN, -0.1, -0.2, -0.4, -0.6, -1.2, Number.NaN],
  "closed-can": [-0.8, -2.3, -4.8, -6.5, -7.9, -10.2, -11.1],
};

const shielded = (spec: object, shielding?: object) => {
  const { coils, ...rest } = spec as { coils: { coil: object } };
  return { ...rest, coils: { coil: { ...coils.coil, ...(shielding ? { shielding } : {}) } } };
};

function guardWith(laws: Readonly<Record<string, object | undefined>>) {
  const { parts } = threeSingles() as { parts: Record<string, object> };
  const pickups = Object.fromEntries(
    ["neck", "middle", "bridge"].map((name) => [name, shielded(parts[name]!, laws[name])]),
  );
  return readBuild(threeSingles({ parts: pickups }));
}

const LAWS = {
  neck: [{ shelf: 900, depth: 3 }, { pole: 3000 }],
  middle: undefined,
  bridge: { shelf: 1370, depth: 1.4 },
};
const SETTINGS: readonly RawSettings[] = [
  { lever: 1 },
  { lever: 2, volume: 6, tone1: 4 },
  { lever: 4, tone1: 2 },
  { lever: 5, volume: 9 },
];

describe("what metal takes of a coil's EMF", () => {
  test.each(METAL_TYPES)("$name is within 0.9 dB of what was measured", ({ name, shielding }) => {
    const law = emfLaw(shielding as { pole: number });
    for (const [index, hertz] of HERTZ.entries()) {
      const measured = MEASURED[name]![index]!;
      if (Number.isNaN(measured)) continue;
      const { re, im } = law(Float64Array.of(hertz));
      expect(Math.abs(20 * Math.log10(Math.hypot(re[0]!, im[0]!)) - measured), `${hertz} Hz`).toBeLessThan(0.9);
    }
  });

  test("a pole is 3.01 dB and 45° down at its frequency, a shelf half its depth at its own", () => {
    const at = (law: object, hertz: number) => {
      const { re, im } = emfLaw(law as { pole: number })(Float64Array.of(hertz));
      return {
        level: 20 * Math.log10(Math.hypot(re[0]!, im[0]!)),
        phase: (Math.atan2(im[0]!, re[0]!) * 180) / Math.PI,
      };
    };
    expect(at({ pole: 3000 }, 3000).level).toBeCloseTo(-3.0103, 4);
    expect(at({ pole: 3000 }, 3000).phase).toBeCloseTo(-45, 9);
    expect(at({ shelf: 2000, depth: 6 }, 2000).level).toBeCloseTo(-3, 9);
    expect(at({ shelf: 2000, depth: 6 }, 2e8).level).toBeCloseTo(-6, 6);
  });

  test("one law on every coil is that law on the curve, cutoff included", () => {
    const law = { pole: 4000 };
    const [plain, behind] = [guardWith({}), guardWith({ neck: law, middle: law, bridge: law })];
    const frequencies = Float64Array.from([100, 1000, 4000, 9000]);
    const settings = (build: typeof plain) => parseSettings(new Controls(build), { lever: 5 });
    const levels = (build: typeof plain) =>
      curveOf(new ResponseEngine(build).transfersIn(settings(build)), frequencies, {
        withSources: true,
        checkpoint() {},
      });
    const [before, after] = [levels(plain), levels(behind)];
    for (const [i, hertz] of frequencies.entries())
      expect(after.magnitude[i]! - before.magnitude[i]!).toBeCloseTo(-10 * Math.log10(1 + (hertz / 4000) ** 2), 9);
    expect(after.cutoff).toBeLessThan(before.cutoff!);
    expect(after.sources).toHaveLength(before.sources!.length);
  });

  test("of a list, all of it: a cover's pole on top of the shelf of the steel", () => {
    const [steel, cover] = [{ shelf: 1370, depth: 1.4 }, { pole: 10_500 }];
    const at = Float64Array.of(900, 5000);
    const [both, one, other] = [[steel, cover], steel, cover].map((law) => emfLaw(law as { pole: number })(at));
    const product = times(one!, other!);
    for (const i of at.keys()) {
      expect(both!.re[i]).toBeCloseTo(product.re[i]!, 12);
      expect(both!.im[i]).toBeCloseTo(product.im[i]!, 12);
    }
  });

  test("polynomials and the solution frequency by frequency are at one about it, lists and shared metals included", () => {
    const steel = { shelf: 1370, depth: 1.4 };
    const build = guardWith({ neck: [steel, { pole: 3000 }, steel], middle: steel, bridge: [{ pole: 10_500 }] });
    const maker = new CircuitMaker(build);
    const engine = new ResponseEngine(build);
    const frequencies = Float64Array.from([30, 300, 2000, 4100, 8000, 19_000]);
    for (const raw of SETTINGS) {
      const settings = parseSettings(new Controls(build), raw);
      const quick = engine.transfersIn(settings);
      const solved = solvedTransfers(maker.circuitIn(settings), maker.sources);
      expect(quick.levelAndPhase).toBeDefined();
      expect(solved.levelAndPhase).toBeUndefined();
      for (const [source, wanted] of [...solved.perSource(frequencies), solved.total(frequencies)].entries()) {
        const got = [...quick.perSource(frequencies), quick.total(frequencies)][source]!;
        for (const i of frequencies.keys())
          expect(Math.hypot(got.re[i]! - wanted.re[i]!, got.im[i]! - wanted.im[i]!)).toBeLessThan(
            1e-7 * Math.hypot(wanted.re[i]!, wanted.im[i]!) + 1e-11,
          );
      }
      expect(quick.power().at(3000)).toBeCloseTo(solved.power().at(3000), 9);
    }
  });

  test("is refused by its field where it is neither a pole nor a shelf", () => {
    expect(() => guardWith({ neck: { pole: "3 farads" } })).toThrow(/parts\.neck\.coils\.coil\.shielding/);
    expect(() => guardWith({ neck: {} })).toThrow(/parts\.neck\.coils\.coil\.shielding/);
    const four = Array.from({ length: MAX_METALS + 1 }, () => ({ pole: 3000 }));
    expect(() => guardWith({ neck: four })).toThrow(/parts\.neck\.coils\.coil\.shielding/);
  });
});

describeWith("ngspice", "a guard of which some coils are behind metal", () => {
  test("curves as ngspice has it, within 0.001 dB and 0.01°", () => {
    const build = guardWith(LAWS);
    const controls = new Controls(build);
    const maker = new CircuitMaker(build);
    const laws = maker.sources.map(({ spec }) => spec.shielding);
    const netlists = SETTINGS.map((raw) => {
      const { network, outputNode } = maker.circuitIn(parseSettings(controls, raw));
      const emfs = maker.sources.map(({ emf }) => emf);
      let source = 0;
      return netlistOf(network, outputNode, emfs).flatMap((card) =>
        card.startsWith("V") ? behindMetal(card, laws[source++]) : [card],
      );
    });
    for (const [index, result] of acSweeps(netlists).entries()) {
      const transfers = new ResponseEngine(build).transfersIn(parseSettings(controls, SETTINGS[index]!));
      const { re, im } = transfers.total(result.frequenciesHz);
      for (const i of result.frequenciesHz.keys()) {
        const [size, wanted] = [Math.hypot(re[i]!, im[i]!), Math.hypot(result.re[i]!, result.im[i]!)];
        expect(Math.abs(20 * Math.log10(size / wanted))).toBeLessThan(0.001);
        const apart = Math.atan2(
          im[i]! * result.re[i]! - re[i]! * result.im[i]!,
          re[i]! * result.re[i]! + im[i]! * result.im[i]!,
        );
        expect(Math.abs(apart) * (180 / Math.PI)).toBeLessThan(0.01);
      }
    }
  });
});
