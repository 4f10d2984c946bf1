import { describe, expect, it } from "vitest";
import { integratedLoudness } from "../../src/audio/loudness.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { loudnessLu } from "../../src/choice/band-energies.ts";
import { energiesFor, Guard } from "../../src/choice/guard.ts";
import { commonDrive, driveOfEach } from "../../src/choice/recorded-drive.ts";
import { SLICES, SLICES_PER_BAND } from "../../src/choice/slices.ts";
import { feedOf } from "../../src/render/feed.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { onePickup, threeSingles } from "../fixtures/circuits.ts";

const RATE = 48_000;

function bandDecibels(energies: Float64Array): number[] {
  return SLICES.bands.map((_, band) => {
    const slices = energies.subarray(band * SLICES_PER_BAND, (band + 1) * SLICES_PER_BAND);
    return 10 * Math.log10(slices.reduce((sum, energy) => sum + energy, 1e-30));
  });
}

function rendered(build: object, signal: string, raw: RawSettings) {
  const guard = new Guard(readBuild(build));
  const settings = parseSettings(guard.controls, raw);
  const source = { name: signal, sampleRateHz: RATE };
  const renderer = createRenderer({ build: guard.build, signal: source }, [settings], NO_CHECKPOINT);
  return { guard, settings, source, sound: renderer.render(settings) };
}

function bandsOf(of: ReturnType<typeof rendered>): { computed: number[]; measured: number[] } {
  const { guard, settings, source, sound } = of;
  const { coils } = feedOf(guard.build, guard.sources, source, undefined);
  const heard = commonDrive("out", sound.channels[0]!, RATE);
  return {
    computed: bandDecibels(energiesFor(guard.transfers(settings), driveOfEach("pluck", coils, RATE))),
    measured: bandDecibels(heard.kind === "common" ? heard.energy : new Float64Array()),
  };
}

describe("band energies of a phrase", () => {
  it.each<[string, RawSettings, RawSettings]>([
    ["the tone of two coils", { lever: 4 }, { lever: 4, tone: 3 }],
    ["one coil against two of opposite winding in parallel", { lever: 1 }, { lever: 2 }],
    ["the volume of one coil", { lever: 5 }, { lever: 5, volume: 5 }],
  ])("are those of the rendered sound, for %s", (_name, first, second) => {
    const [a, b] = [first, second].map((raw) => bandsOf(rendered(threeSingles(), "pluck", raw)));
    const top = Math.max(...a!.measured);
    for (const [band, db] of a!.measured.entries()) {
      // Below −40 dB the leakage of partials cut off by the phrase's end counts too.
      if (db < top - 40) continue;
      // A slice is a quarter of an ERB, over which a curve is taken as straight; where two coils nearly cancel, that and the
      // coils' different centres of gravity leave up to 0.15 dB.
      expect(Math.abs(a!.computed[band]! - db)).toBeLessThan(0.2);
      const difference = b!.measured[band]! - db;
      expect(Math.abs(b!.computed[band]! - a!.computed[band]! - difference)).toBeLessThan(0.2);
    }
  });

  it("of steady noise give the loudness difference that a BS.1770 meter reads, within 0.05 LU", () => {
    const open = rendered(onePickup(), "noise", { tone: 10 });
    const shut = rendered(onePickup(), "noise", { tone: 0 });
    const { drive } = feedOf(open.guard.build, open.guard.sources, open.source, undefined);
    const noise = commonDrive("noise", drive[0]!, RATE);
    const lu = (of: typeof open) => loudnessLu(energiesFor(of.guard.transfers(of.settings), noise));
    const metered = integratedLoudness(shut.sound)! - integratedLoudness(open.sound)!;
    expect(metered).toBeLessThan(-10);
    expect(Math.abs(lu(shut) - lu(open) - metered)).toBeLessThan(0.05);
  });
});
