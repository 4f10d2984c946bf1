import { describe, expect, it } from "vitest";
import type { Across } from "../../../src/choice/fit/coil-model.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import { requireLoaded } from "../../../src/measure/methods/load-order.ts";
import { ratioOfLoads } from "../../../src/measure/methods/two-loads.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { casesOf } from "../../effort.ts";
import { COIL, heardUnder, INPUT, LOAD } from "../simulated-pickup.ts";
import { simulatedTransfer } from "../simulated-transfer.ts";

const normal = createNormal(3);
const take = (...loads: Across[]) => simulatedTransfer(heardUnder(INPUT, ...loads), normal);
const SMALL: Across = { resistance: Number.POSITIVE_INFINITY, capacitance: 47e-12 };
const RESISTOR: Across = { resistance: 100e3, capacitance: 0 };
const LARGE: Across = { resistance: Number.POSITIVE_INFINITY, capacitance: 10e-9 };

describe("a coil recorded without and with a load", () => {
  it.each([
    ["200 kΩ and 470 pF", LOAD],
    ["47 pF", SMALL],
    ["100 kΩ", RESISTOR],
    ["10 nF", LARGE],
  ])("is taken as it is, and refused the other way about or without %s", (_, load) => {
    const [unloaded, loaded] = [take(), take(load)];
    requireLoaded(ratioOfLoads(unloaded, loaded, load, true), "loaded");
    expect(() => requireLoaded(ratioOfLoads(loaded, unloaded, load, true), "loaded")).toThrow(/loaded: .*exchanged/);
    expect(() => requireLoaded(ratioOfLoads(unloaded, take(), load, true), "loaded")).toThrow(/not connected/);
  });

  const known = { across: INPUT, resistance: { ohms: COIL.resistance, precision: 0.01 } };
  const [unloaded, loaded] = [take(), take(LOAD)];
  const wrong: [string, Across][] = [
    ["a capacitor of 1 nF", { ...LOAD, capacitance: 1e-9 }],
    ["a resistor of 1 MΩ", { ...LOAD, resistance: 1e6 }],
    ["no resistor", { ...LOAD, resistance: Number.POSITIVE_INFINITY }],
  ];
  it.each(casesOf(wrong, 2))("is refused by the load where %s was told for it", (_, told) => {
    const sweep = ratioOfLoads(unloaded, loaded, told, true);
    requireLoaded(sweep, "loaded");
    expect(() => fitTwoLoads([sweep], known)).toThrow(/leaves \d\.\d\d dB .*the load was not what was told/);
  });

  it("is told to look at the load where less is left than refuses, and of nothing where it is right", () => {
    const sweep = ratioOfLoads(unloaded, loaded, { ...LOAD, resistance: 110e3 }, true);
    expect(fitTwoLoads([sweep], { ...known, models: ["resistor"] }).notes.join()).toContain(
      "look whether the load is as told",
    );
    const right = ratioOfLoads(unloaded, loaded, LOAD, true);
    expect(fitTwoLoads([right], { ...known, models: ["one-section"] }).notes).toEqual([]);
  });
});
