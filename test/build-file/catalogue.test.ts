import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { parseQuantity } from "../../src/build-file/quantity.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Pickup } from "../../src/build-file/schema.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";

/** Farads, instrument's and leads' with them: whole humbuckers and single coils of an open data set (strayr/pickupAnalyseR-data, CC0-1.0), reduced. */
const MEASURED_FARADS = { single: [128e-12, 386e-12], humbucker: [93e-12, 272e-12] } as const;

const NORMAL_LEAD = { length: "5m", capacitance: "100p" };

function withoutMetal(pickup: Pickup): Pickup {
  const coils = Object.entries(pickup.coils).map(([name, coil]) => [name, { ...coil, shielding: [] }]);
  return { ...pickup, coils: Object.fromEntries(coils) };
}

describe.each(CATALOGUE.pickups.map((type) => type.name))("the catalogue's %s", (name) => {
  const type = CATALOGUE.pickups.find((candidate) => candidate.name === name)!;
  const build = readBuild({
    presolder: 1,
    plan: {
      layout: "one-pickup",
      pickups: { bridge: name },
      volume: type.usualPot,
      tones: [{ pot: type.usualPot, cap: "22n" }],
    },
    cable: NORMAL_LEAD,
  });

  test("has a capacitance, its leads' with it, within those of its sort as measured", () => {
    const coils = Object.values(type.coils).map((coil) => parseQuantity(coil.capacitance!, "capacitance").value);
    const whole = coils.length === 1 ? coils[0]! : 1 / coils.reduce((sum, farads) => sum + 1 / farads, 0);
    const [least, most] = MEASURED_FARADS[coils.length === 1 ? "single" : "humbucker"];
    expect(whole).toBeGreaterThanOrEqual(least);
    expect(whole).toBeLessThanOrEqual(most);
  });

  test("has an inductance in all within the published 1 to 10 H (H. E. W. Lemme)", () => {
    const coils = Object.values(build.parts).flatMap((part) =>
      part.kind === "pickup" ? Object.values(part.coils) : [],
    );
    const sections = (loss: (typeof coils)[number]["loss"]) =>
      Array.isArray(loss) ? loss.reduce((sum, section) => sum + (section.inductance ?? 0), 0) : 0;
    const henries = coils.reduce((sum, coil) => sum + coil.inductance + sections(coil.loss), 0);
    expect(henries).toBeGreaterThan(1);
    expect(henries).toBeLessThan(10);
  });

  // What metal takes of the EMF, which can leave no peak at all, is apart from the resonance of coil, leads and load.
  const bare = readBuild({
    ...build,
    parts: Object.fromEntries(
      Object.entries(build.parts).map(([part, spec]) => [part, spec.kind === "pickup" ? withoutMetal(spec) : spec]),
    ),
  });

  test("resonates with normal leads at 2 to 5 kHz, 0 to 12 dB high, as published (H. E. W. Lemme)", () => {
    const transfers = new ResponseEngine(bare).transfersIn(new Controls(bare).atRest);
    const { peak } = curveOf(transfers, Float64Array.of(80));
    expect(peak!.frequency).toBeGreaterThan(2000);
    expect(peak!.frequency).toBeLessThan(5000);
    expect(peak!.level).toBeGreaterThan(0);
    expect(peak!.level).toBeLessThan(12);
  });
});

test("single coils of medium wind and humbuckers of medium wind stand at the published typical 2.8 H and 4.7 H (R. Stanley)", () => {
  const typed = (name: string) => CATALOGUE.pickups.find((type) => type.name === name)!;
  const henriesOf = (name: string) =>
    Object.values(typed(name).coils).map((coil) => parseQuantity(coil.inductance, "inductance").value);
  expect(henriesOf("single-medium")).toEqual([2.8]);
  const [slug, screw] = henriesOf("humbucker-medium");
  const sections = Object.values(typed("humbucker-medium").coils).flatMap(({ loss }) =>
    Array.isArray(loss) ? loss.map(({ inductance = 0 }) => parseQuantity(inductance, "inductance").value) : [],
  );
  const mutual = 2 * typed("humbucker-medium").coupling! * Math.sqrt(slug! * screw!);
  const total = slug! + screw! + mutual + sections.reduce((sum, henries) => sum + henries, 0);
  expect(total).toBeCloseTo(4.59, 6);
  expect(Math.abs(total / 4.7 - 1)).toBeLessThan(0.05);
});

test("names no two pickups, layouts or plans alike", () => {
  for (const list of [CATALOGUE.pickups, CATALOGUE.layouts, CATALOGUE.plans] as const) {
    const names = list.map((entry) => ("id" in entry ? entry.id : entry.name));
    expect(new Set(names).size).toBe(names.length);
  }
});

test("a valve amplifier's input loads with its first valve's capacitance too", () => {
  const valve = CATALOGUE.loads.find(({ name }) => name === "triode")!;
  expect(parseQuantity(valve.resistance, "resistance").value).toBe(1e6);
  // 1.6 pF to the cathode (from memory) and 1.7 pF to the anode (from memory) times 1 + 60 (valvewizard.co.uk, Grid-stoppers and Miller capacitance).
  expect(parseQuantity(valve.capacitance, "capacitance").value).toBeCloseTo(1.6e-12 + 61 * 1.7e-12, 12);
  expect(parseQuantity(valve.stopper!, "resistance").value).toBe(68e3);
});

test("every single coil but the covered one, which has no pair, has a twin wound and polarised the other way", () => {
  const singles = CATALOGUE.pickups.filter(({ name }) => /^(single|p90)/.test(name) && !/covered|sized/.test(name));
  const turned = { winding: "reverse", magnet: "south" };
  for (const { name, coils } of singles.filter(({ name }) => !name.endsWith("-rwrp"))) {
    const twin = singles.find((other) => other.name === `${name}-rwrp`);
    expect(twin?.coils, name).toEqual({ coil: { ...coils.coil, ...turned } });
  }
});

test("titles say what a thing is, with no designation in brackets", () => {
  const titles = [...CATALOGUE.pickups, ...CATALOGUE.layouts, ...CATALOGUE.plans].map(({ title }) => title);
  expect(titles.filter((title) => /[([]/.test(title))).toEqual([]);
});
