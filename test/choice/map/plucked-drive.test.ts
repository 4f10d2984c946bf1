import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { driveOfPartials } from "../../../src/choice/drive.ts";
import { heardDifference } from "../../../src/choice/ear/heard-difference.ts";
import { heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { energiesFor, Guard } from "../../../src/choice/guard.ts";
import { driveOfEach } from "../../../src/choice/recorded-drive.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import { feedOf } from "../../../src/render/feed.ts";
import { pluckedPartials } from "../../../src/render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../../src/response/coil-places.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

const guard = new Guard(readBuild(threeSingles()));
const { build, sources, controls } = guard;
const { coils, sampleRateHz } = feedOf(build, sources, { name: "strum", sampleRateHz: 48_000 }, undefined);
const rendered = driveOfEach("strum", coils, sampleRateHz);
const plucked = driveOfPartials(
  "strum",
  pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {}),
  sources.length,
);

const PAIRS: readonly (readonly [string, RawSettings, RawSettings])[] = [
  ["neck and bridge", { lever: 5 }, { lever: 1 }],
  ["bridge, and bridge with middle", { lever: 1 }, { lever: 2 }],
  ["tone open and half down", { lever: 3 }, { lever: 3, tone: 4 }],
  ["tone open and shut", { lever: 5 }, { lever: 5, tone: 0 }],
];

describe("partials' energies in closed form", () => {
  it.each(PAIRS)("tell %s apart as the rendered phrase does", (_name, first, second) => {
    const of = (drive: typeof rendered) => {
      const [a, b] = [first, second].map((raw) => energiesFor(guard.transfers(parseSettings(controls, raw)), drive));
      return heardDifference(heardSound(a!), heardSound(b!));
    };
    const [exact, quick] = [of(rendered), of(plucked)];
    // Partials that meet in one band beat in the rendered phrase, and its plectrum scrapes; 0.14 and 0.42 dB were the most.
    expect(Math.abs(quick.rmsDb - exact.rmsDb)).toBeLessThan(0.2);
    expect(Math.abs(quick.largest.db - exact.largest.db)).toBeLessThan(0.5);
    // Where two bands differ by nearly as much, either may be the largest.
    const there = exact.perBandDb[SLICES.bands.indexOf(quick.largest.band)]!;
    expect(Math.abs(there - exact.largest.db)).toBeLessThan(1.5);
  });
});
