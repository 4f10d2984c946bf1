import { expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, withControl } from "../../../src/build-file/settings.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { drawEnds, endSpreadsOf } from "../../../src/choice/tolerance/end-spread.ts";
import { toleranceBands } from "../../../src/choice/tolerance/tolerance.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const withVolume = (volume: object) =>
  readBuild(
    onePickup({ parts: { volume: { kind: "pot", role: "volume", resistance: "250k", taper: "audio", ...volume } } }),
  );
const endOf = (volume: object) => endSpreadsOf(withVolume(volume)).find(({ part }) => part === "volume");

// Data sheets: 1 % of the track, of a push-pull of 17 mm too; carbon pots of 9 to 16 mm 20 to 50 Ω.
it.each([
  ["a full-size pot's up to 1 % of its track", {}, 2500],
  ["a push-pull's too", { body: "mini", drives: "dpdt" }, 2500],
  ["a mini pot's up to 50 Ω", { body: "mini" }, 50],
  ["1 % of what was measured", { measured: "300k" }, 3000],
])("the end of a track is drawn: %s", (_, volume, high) => {
  expect(endOf(volume)).toMatchObject({ field: "endResistance", low: 0.5, high });
});

it("the end of a track is as the build says where it says other than 1 Ω", () => {
  expect(endOf({ endResistance: "20" })).toBeUndefined();
  expect(endOf({ endResistance: 0 })).toBeUndefined();
});

it("ends are drawn evenly on a log scale: each decade as often as it is wide", () => {
  const uniform = createUniform(5);
  const spread = [{ part: "volume", field: "endResistance", low: 0.5, high: 2500 }];
  const drawn = Array.from({ length: 4000 }, () => drawEnds(spread, uniform)[0]!.value);
  for (const [from, to] of [
    [0.5, 5],
    [5, 50],
    [50, 500],
    [500, 2500],
  ] as const) {
    const share = drawn.filter((ohms) => ohms >= from && ohms < to).length / drawn.length;
    // Four standard deviations of 4,000 draws are under 0.03.
    expect(Math.abs(share - Math.log(to / from) / Math.log(2500 / 0.5))).toBeLessThan(0.03);
  }
});

it("bands at volume 0 hold what leaks: by hand 20·log of the end over track and coil, at 5, 50 and 95 % of the draws", () => {
  const guard = new Guard(withVolume({ tolerance: 0 }));
  const controls = new Controls(guard.build);
  const atZero = withControl(controls, controls.atRest, "volume", 0);
  const bands = toleranceBands(guard, atZero, Float64Array.of(100));
  const level = (share: number) => 20 * Math.log10((0.5 * 5000 ** share) / 256_000);
  const shown = [bands.low, bands.middle, bands.high].map((band) => band[0]!);
  // 74 dB in all: the 5 % point of 2,000 draws scatters by half a per cent of the draws, 0.4 dB.
  for (const [index, share] of [0.05, 0.5, 0.95].entries())
    expect(Math.abs(shown[index]! - level(share)), `${share}`).toBeLessThan(2);
});
