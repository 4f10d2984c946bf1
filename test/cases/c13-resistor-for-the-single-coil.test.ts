import { describe, expect, test } from "vitest";
import { guardOf, HUMBUCKER, jackOhms, levelAt, oneOn, peakOver80, SINGLE } from "./bench-guard.ts";
import { ohmsBetween } from "./measured.ts";

// A resistor from a single coil's hot to ground makes 500 kΩ pots look smaller to it: 270 kΩ where it is drawn, 220 k + 39 k
// where there is none; common practice, no source. Readings and loads are parallel resistances worked by hand; the peaks were
// computed outside the project (see bench-guard.ts).
const TO_259K = { plan: { resistors: [{ across: "bridge", resistance: "259k" }] } };
const aided = oneOn(SINGLE, "500k", "500k", TO_259K);
const plain = oneOn(SINGLE, "500k", "500k");

test("a 6 kΩ pickup on 500 kΩ with 259 kΩ to ground reads 5.796 kΩ at the jack, 5.929 kΩ without", () => {
  expect(jackOhms(aided)! / 1000).toBeCloseTo(5.796, 3);
  expect(jackOhms(plain)! / 1000).toBeCloseTo(5.929, 3);
});

test("the load alone measures 170.6 kΩ", () => {
  const open = { ...aided, wires: aided.wires.filter(({ from, to }) => ![from, to].includes("bridge.ground")) };
  expect(ohmsBetween(open, "volume.3", "jack.sleeve")! / 1000).toBeCloseTo(170.6, 1);
});

describe("at treble, with a 500 kΩ tone, the resistor makes nearly the 125 kΩ of 250 kΩ pots", () => {
  test.each([
    ["259k", 127.2],
    ["270k", 129.8],
  ])("%s: %d kΩ", (resistance, kilohms) => {
    // A volume of that value alone, no tone: the same level at 3 kHz to within what the cap's reactance leaves.
    const build = oneOn(SINGLE, "500k", "500k", { plan: { resistors: [{ across: "bridge", resistance }] } });
    const alone = guardOf({ layout: "one-pickup", pickups: { bridge: SINGLE }, volume: `${kilohms}k` });
    expect(Math.abs(levelAt(build, 3000) - levelAt(alone, 3000))).toBeLessThan(0.05);
  });
});

test.each([
  ["500 kΩ pots", plain, 8.1],
  ["500 kΩ pots with 259 kΩ", aided, 4.4],
  ["250 kΩ pots", oneOn(SINGLE, "250k", "250k"), 4.3],
] as const)("the single coil peaks on %s by its own height", (_, build, level) => {
  expect(Math.abs(peakOver80(build)!.level - level)).toBeLessThan(0.3);
});

test("the humbucker beside it, on the other throw, does not notice", () => {
  const pair = (resistors: object[]) =>
    guardOf({
      layout: "lever-3-two-pickups",
      pickups: { neck: HUMBUCKER, bridge: SINGLE },
      volume: "500k",
      tones: [{ pot: "500k", cap: "22n" }],
      resistors,
    });
  const [bare, with259k] = [pair([]), pair([{ across: "bridge", resistance: "259k" }])];
  for (const frequency of [80, 1000, 3000, 8000])
    expect(levelAt(with259k, frequency, { lever: 3 })).toBeCloseTo(levelAt(bare, frequency, { lever: 3 }), 9);
});
