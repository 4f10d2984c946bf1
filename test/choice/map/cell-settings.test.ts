import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, settingsKey } from "../../../src/build-file/settings.ts";
import { cellSettings } from "../../../src/choice/map/cell-settings.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

const controlsOf = (build: object) => new Controls(readBuild(build));

describe("a guard's cells", () => {
  it("are its positions with tones and volumes at 10, or each at four stops of the tone", () => {
    const controls = controlsOf(threeSingles());
    const open = cellSettings(controls, "open");
    expect(open.settings.map(({ switches }) => switches.lever)).toEqual([1, 2, 3, 4, 5]);
    expect(open.settings.every(({ dials }) => Object.values(dials).every((dial) => dial === 10))).toBe(true);
    const turned = cellSettings(controls, "turned");
    expect(turned.settings).toHaveLength(20);
    expect(new Set(turned.settings.map(settingsKey)).size).toBe(20);
    expect(new Set(turned.settings.map(({ dials }) => dials.volume))).toEqual(new Set([10]));
  });

  it("of a guard without a switch are one, as it is", () => {
    expect(cellSettings(controlsOf(onePickup()), "open").settings).toHaveLength(1);
  });

  it("go through every switch, and say so where there are too many of them", () => {
    const toggles = (count: number) =>
      controlsOf(
        threeSingles({
          parts: Object.fromEntries(
            Array.from({ length: count }, (_, i) => [`mini${i}`, { kind: "switch", type: "dpdt" }]),
          ),
        }),
      );
    expect(cellSettings(toggles(2), "open")).toMatchObject({ settings: { length: 20 }, isCut: false });
    expect(cellSettings(toggles(8), "open")).toMatchObject({ settings: { length: 5 }, isCut: true });
  });
});
