import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { usualAmplifier } from "../../src/listening/noise/amplifier.ts";
import type { NoiseWish } from "../../src/listening/noise/noise-maker.ts";
import { USUAL_ROOM } from "../../src/listening/noise/room.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { settingsOf, WORK } from "./scenario-settings.ts";

const RATE = 48_000;
const coil = { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p" } } };
const reversed = {
  kind: "pickup",
  coils: { coil: { ...coil.coils.coil, winding: "reverse", magnet: "south" } },
};
const build = readBuild(threeSingles({ parts: { neck: coil, middle: reversed, bridge: coil } }));

function wish(mainsHz: 50 | 60 | null, more: Partial<NoiseWish> = {}): NoiseWish {
  const amplifier = usualAmplifier(build);
  return { mainsHz, isCoilsOnly: true, isHissing: false, room: USUAL_ROOM, amplifier, ...more };
}

/** RMS of what the noise adds to a click, 0.2 s and more after it. */
function humLevel(position: number, noise: NoiseWish | undefined): number {
  const settings = settingsOf(build, { lever: position });
  const request = { build, signal: { name: "click", sampleRateHz: RATE }, noise };
  const sound = createRenderer(request, [settings], WORK)
    .render(settings)
    .channels[0]!.subarray(0.2 * RATE, 0.9 * RATE);
  return Math.sqrt(sound.reduce((sum, sample) => sum + sample * sample, 0) / sound.length);
}

describe("room hum with a reverse-wound, reverse-polarity middle pickup", () => {
  it("is heard from each pickup alone and cancels in positions 2 and 4", () => {
    const [bridge, pair2, middle, pair4, neck] = [1, 2, 3, 4, 5].map((position) =>
      humLevel(position, wish(50)),
    ) as number[];
    expect(bridge).toBeGreaterThan(1e-4);
    expect(neck).toBeCloseTo(middle!, 6);
    // The bridge pickup has no tone pot in this guard, and so hums a little more.
    expect(bridge! / middle!).toBeGreaterThan(1);
    expect(bridge! / middle!).toBeLessThan(1.05);
    expect(pair2! / bridge!).toBeLessThan(1e-3);
    expect(pair4! / bridge!).toBeLessThan(1e-3);
  });

  it("is absent unless asked for", () => {
    expect(humLevel(1, undefined)).toBeLessThan(1e-7);
  });

  it("stands at the frequency asked for", () => {
    const settings = settingsOf(build, { lever: 1 });
    const amplitudeAt = (frequency: number, hum: 50 | 60) => {
      const request = { build, signal: { name: "click", sampleRateHz: RATE }, noise: wish(hum) };
      const sound = createRenderer(request, [settings], WORK)
        .render(settings)
        .channels[0]!.subarray(0.2 * RATE, 0.7 * RATE);
      const sum = (wave: (x: number) => number) =>
        sound.reduce((total, sample, n) => total + sample * wave((2 * Math.PI * frequency * n) / RATE), 0);
      return (2 * Math.hypot(sum(Math.cos), sum(Math.sin))) / sound.length;
    };
    expect(amplitudeAt(60, 60)).toBeGreaterThan(100 * amplitudeAt(50, 60));
    expect(amplitudeAt(50, 50)).toBeGreaterThan(100 * amplitudeAt(60, 50));
  });
});

it("hum joins a phrase without changing it", () => {
  const settings = settingsOf(build, { lever: 2 });
  const render = (noise: NoiseWish | undefined) =>
    createRenderer({ build, signal: { name: "pluck", sampleRateHz: RATE }, noise }, [settings], WORK).render(settings)
      .channels[0]!;
  const plain = render(undefined);
  const humming = render(wish(50));
  // In position 2 the hum cancels, so that both must be the same note.
  for (let n = 0; n < plain.length; n++)
    if (Math.abs(plain[n]! - humming[n]!) > 1e-5) expect(humming[n]).toBe(plain[n]);
});
