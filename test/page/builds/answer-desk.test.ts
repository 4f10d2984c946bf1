import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { AnswerDesk } from "../../../src/page/builds/answer-desk.ts";
import { askedSweep } from "../../../src/page/builds/asked-sweep.ts";
import { readSource } from "../../../src/page/engine/source-reader.ts";
import type { BuildSource, Reading } from "../../../src/page/state/reading.ts";
import { compared } from "../../choice/compare/comparisons.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

const pot = (resistance: string, more: object = {}) => ({
  kind: "pot",
  role: "volume",
  resistance,
  taper: "audio",
  ...more,
});
const usual = threeSingles();
const brighter = threeSingles({ parts: { volume: pot("500k") } });

function reading(source: object): Reading {
  const read = readSource(source as BuildSource);
  if (!("reading" in read)) throw new Error("unreadable");
  return read.reading;
}

describe("the answer beside the page's thread", () => {
  it("is the service's, over the same sweep", () => {
    const builds = [readBuild(usual), readBuild(brighter)] as const;
    const sweep = { lever: [1, 2, 3, 4, 5] };
    const { answer, phrase } = new AnswerDesk().answer({ builds, settings: {}, sweep, playing: {} });
    const { told } = compared("service", builds, sweep);
    expect(answer).toBe(told.answer);
    expect(phrase).toBe(told.phrase);
    expect(answer).toMatch(/^500 kΩ instead of 250 kΩ at the volume is /);
  });

  it("stands where the two have other controls: what the second lacks is at rest", () => {
    const builds = [readBuild(onePickup()), readBuild(usual)] as const;
    const { answer } = new AnswerDesk().answer({
      builds,
      settings: { tone: 3 },
      sweep: { tone: [10, 0] },
      playing: {},
    });
    expect(answer).toMatch(/ dB at /);
  });
});

describe("the settings that two guards are compared in", () => {
  const sweepOf = (a: object, b: object, said?: Parameters<typeof askedSweep>[2]) =>
    askedSweep(reading(a), reading(b), said);

  it("are all positions for what is heard at any dial, and dials besides for what is not", () => {
    expect(sweepOf(usual, brighter)).toEqual({ lever: [1, 2, 3, 4, 5], tone: [10], volume: [10] });
    const tapered = threeSingles({ parts: { volume: pot("250k", { taper: "linear" }) } });
    expect(sweepOf(usual, tapered).volume!.length).toBeGreaterThan(1);
    const capped = onePickup({ parts: { cap: { kind: "cap", capacitance: "47n" } } });
    expect(sweepOf(onePickup(), capped).tone).toContain(0);
  });

  it("are the example's where it says which, as far as both guards have its controls", () => {
    expect(sweepOf(usual, brighter, { lever: [2], volume: [10, 4], gone: [1] })).toEqual({
      lever: [2],
      volume: [10, 4],
    });
    expect(new Controls(readBuild(onePickup())).main).toBeUndefined();
    expect(sweepOf(onePickup(), usual, { lever: [2], tone: [0] })).toEqual({ tone: [0] });
  });
});
