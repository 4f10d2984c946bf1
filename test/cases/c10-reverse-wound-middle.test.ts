import { describe, expect, test } from "vitest";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { humLevelDb } from "../../src/response/hum.ts";
import { describeSetting } from "../../src/response/labels/setting-describer.ts";
import { buildOf, leadsSwapped, single, threeSingles } from "../bench/audit/guards.ts";

function inPosition(lever: number, middle: object) {
  const build = buildOf(threeSingles, { change: { middle: single({ distance: "0.1m", ...middle }) } });
  const settings = parseSettings(new Controls(build), { lever });
  return {
    described: describeSetting(build, settings),
    humDb: humLevelDb(new ResponseEngine(build).transfersIn(settings)),
  };
}

// Faraday's law: turning a coil's winding round turns the sign of the string and of hum, turning its magnet that of the string
// alone. A list of four rules that says otherwise of the last row is in print; it is wrong.
describe("C10: is my reverse-wound middle pickup out of phase?", () => {
  test.each([
    ["same winding, same magnet", {}, "in phase", "not cancelling"],
    ["opposite winding, opposite magnet", { winding: "reverse", magnet: "south" }, "in phase", "cancelling"],
    ["same winding, opposite magnet", { magnet: "south" }, "out of phase", "not cancelling"],
    ["opposite winding, same magnet", { winding: "reverse" }, "out of phase", "cancelling"],
  ] as const)("%s: strings and hum", (_, middle, phase, hum) => {
    const { described, humDb } = inPosition(2, middle);
    expect(described).toMatchObject({ relation: "parallel", phase, hum });
    if (hum === "cancelling") expect(humDb).toBeLessThan(-100);
    else expect(humDb).toBeGreaterThan(-1);
  });

  test("swapping one pickup's two leads is turning its winding round and nothing else", () => {
    const swapped = buildOf(threeSingles, {
      change: { middle: single({ distance: "0.1m" }) },
      ...leadsSwapped("middle", "lever.A2"),
    });
    const { label } = describeSetting(swapped, parseSettings(new Controls(swapped), { lever: 2 }));
    expect(label).toBe(inPosition(2, { winding: "reverse" }).described.label);
  });

  test("with a reverse-wound, reverse-polarity middle, hum stays in 1, 3 and 5 and goes in 2 and 4", () => {
    const humming = [1, 2, 3, 4, 5].map(
      (lever) => inPosition(lever, { winding: "reverse", magnet: "south" }).humDb > -20,
    );
    expect(humming).toEqual([true, false, true, false, true]);
  });
});
