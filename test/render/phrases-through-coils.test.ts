import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { phraseSignals } from "../../src/render/phrase-cache.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { coilPlaces, stringSetOf } from "../../src/response/coil-places.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { casesOf } from "../effort.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { readScenario, settingsOf, WORK } from "./scenario-settings.ts";
import { binsBetween, powerOfTwoFrom, spectrumOf } from "./spectra.ts";

const RATE = 48_000;

function renderingAndSum(build: ReturnType<typeof readBuild>, raw: Record<string, number>) {
  const settings = settingsOf(build, raw);
  const renderer = createRenderer({ build, signal: { name: "strum", sampleRateHz: RATE } }, [settings], WORK);
  const output = renderer.render(settings).channels[0]!;
  const engine = new ResponseEngine(build);
  const coils = phraseSignals("strum", coilPlaces(build, engine.sources), stringSetOf(build), RATE);
  const size = powerOfTwoFrom(output.length);
  const bins = binsBetween(60, 18_000, 400, RATE, size);
  const rendered = spectrumOf(output, RATE, size, bins);
  const transfers = engine.transfersIn(settings).perSource(rendered.frequenciesHz);
  const sum = { re: new Float64Array(bins.length), im: new Float64Array(bins.length) };
  for (const [coil, samples] of coils.entries()) {
    const heard = spectrumOf(samples, RATE, size, bins);
    const { re, im } = transfers[coil]!;
    for (let i = 0; i < bins.length; i++) {
      sum.re[i]! += heard.re[i]! * re[i]! - heard.im[i]! * im[i]!;
      sum.im[i]! += heard.re[i]! * im[i]! + heard.im[i]! * re[i]!;
    }
  }
  return { rendered, sum, delaySamples: renderer.delaySamples };
}

/** Largest difference between the rendering and Σ coil·H, as a fraction of the loudest bin. */
function largestError({ rendered, sum, delaySamples }: ReturnType<typeof renderingAndSum>): number {
  let loudest = 0;
  let error = 0;
  for (let i = 0; i < sum.re.length; i++) {
    const turn = (-2 * Math.PI * rendered.frequenciesHz[i]! * delaySamples) / RATE;
    const re = sum.re[i]! * Math.cos(turn) - sum.im[i]! * Math.sin(turn);
    const im = sum.re[i]! * Math.sin(turn) + sum.im[i]! * Math.cos(turn);
    loudest = Math.max(loudest, Math.hypot(re, im));
    error = Math.max(error, Math.hypot(rendered.re[i]! - re, rendered.im[i]! - im));
  }
  return error / loudest;
}

describe("a phrase goes through each coil's own transfer", () => {
  it.each(casesOf([{ lever: 1 }, { lever: 2, tone: 5 }, { lever: 4, tone: 0 }, { lever: 5, volume: 6 }], 1))(
    "and the sum is the sum of the coils' spectra at %o",
    (raw) => {
      const { build } = readScenario("hss-250k-or-500k.json");
      // −80 dB of the loudest partial.
      expect(largestError(renderingAndSum(build, raw))).toBeLessThan(1e-4);
    },
  );

  it("with coils of opposite sign and different make", () => {
    expect(largestError(renderingAndSum(readBuild(threeSingles()), { lever: 2 }))).toBeLessThan(1e-4);
  });
});

it("a phrase is rendered once for a set of coils", () => {
  const build = readBuild(threeSingles());
  const places = coilPlaces(build, new ResponseEngine(build).sources);
  const once = phraseSignals("pluck", places, stringSetOf(build), RATE);
  expect(phraseSignals("pluck", places, stringSetOf(build), RATE)).toBe(once);
  expect(phraseSignals("pluck", places.slice(0, 2), stringSetOf(build), RATE)).not.toBe(once);
  expect(phraseSignals("pluck", places, stringSetOf(build), RATE, "dark")).not.toBe(once);
  expect(phraseSignals("pluck", places, { ...stringSetOf(build), age: "old" }, RATE)).not.toBe(once);
});

it("pickups whose place the build leaves out sit at the usual one for their name", () => {
  const build = readBuild(threeSingles());
  const [neck, middle, bridge] = coilPlaces(build, new ResponseEngine(build).sources);
  expect(neck!.distanceMetres).toBeCloseTo(0.162, 3);
  expect(middle!.distanceMetres).toBeCloseTo(0.099, 3);
  expect(bridge!.distanceMetres).toBeLessThan(0.05);
});
