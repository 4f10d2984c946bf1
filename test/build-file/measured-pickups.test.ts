import { describe, expect, test } from "vitest";
import { PICKUP_TYPES, type PickupType } from "../../src/build-file/catalogue/pickup-types.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";

/**
 * The peak of real pickups into 200 kΩ ∥ 470 pF and the instrument's 1 MΩ: Hz, and dB over the lowest frequencies. Open data set
 * strayr/pickupAnalyseR-data (CC0-1.0), reduced from its ratios of unloaded over loaded. Least and most of each sort.
 */
const MEASURED: Readonly<
  Record<string, { readonly hertz: readonly [number, number]; readonly level: readonly [number, number] }>
> = {
  "single-vintage": { hertz: [3245, 3245], level: [6.7, 6.7] },
  "single-medium": { hertz: [3245, 3245], level: [6.7, 6.7] },
  "single-covered": { hertz: [3187, 3187], level: [1.3, 1.6] },
  p90: { hertz: [2355, 2355], level: [1.9, 1.9] },
  "humbucker-vintage": { hertz: [2771, 3077], level: [3.2, 3.2] },
  "humbucker-medium": { hertz: [2594, 3077], level: [2.9, 3.3] },
  "humbucker-hot": { hertz: [1775, 2376], level: [1.2, 2.1] },
};
const LOAD = { resistance: 1 / (1 / 200e3 + 1 / 1e6), capacitance: 470e-12 };
const LOWEST_HZ = 100;

/** A type straight on the jack, its coils in series where their leads come out; as the ratios, without what metal takes of its EMF. */
function alone({ coils: shielded, conductors, coupling }: PickupType) {
  const coils = Object.fromEntries(Object.entries(shielded).map(([name, coil]) => [name, { ...coil, shielding: [] }]));
  const [first, second] = Object.keys(coils);
  const hasLeads = second !== undefined && conductors !== 2;
  const [hot, ground] = hasLeads
    ? [`pickup.${first}.finish`, `pickup.${second}.finish`]
    : ["pickup.hot", "pickup.ground"];
  return readBuild({
    presolder: 1,
    parts: {
      pickup: { kind: "pickup", coils, ...(conductors ? { conductors } : {}), ...(coupling ? { coupling } : {}) },
      jack: { kind: "jack" },
    },
    wires: [
      [hot, "jack.tip"],
      [ground, "jack.sleeve"],
      ...(hasLeads ? [[`pickup.${first}.start`, `pickup.${second}.start`]] : []),
    ],
    load: LOAD,
  });
}

function peakOf(type: PickupType): { readonly hertz: number; readonly level: number } {
  const build = alone(type);
  const transfers = new ResponseEngine(build).transfersIn(new Controls(build).atRest);
  const frequencies = Float64Array.from([LOWEST_HZ, ...logSpaced(800, 12_000, 3000)]);
  const levels = magnitudeDb(transfers.total(frequencies));
  const top = levels.indexOf(Math.max(...levels));
  return { hertz: frequencies[top]!, level: levels[top]! - levels[0]! };
}

describe("catalogue pickups beside real ones of their sort", () => {
  test.each(Object.entries(MEASURED))("%s peaks within 15 % and 1 dB of them", (name, { hertz, level }) => {
    const peak = peakOf(PICKUP_TYPES.find((type) => type.name === name)!);
    expect(peak.hertz).toBeGreaterThan(0.85 * hertz[0]);
    expect(peak.hertz).toBeLessThan(1.15 * hertz[1]);
    expect(peak.level).toBeGreaterThan(level[0] - 1);
    expect(peak.level).toBeLessThan(level[1] + 1);
  });

  test("a reverse-wound twin peaks where its sister does", () => {
    const twins = PICKUP_TYPES.filter(({ name }) => name.endsWith("-rwrp"));
    expect(twins.length).toBeGreaterThan(3);
    for (const twin of twins) {
      const sister = PICKUP_TYPES.find(({ name }) => name === twin.name.replace("-rwrp", ""))!;
      expect(peakOf(twin), twin.name).toEqual(peakOf(sister));
    }
  });

  test("all with steel in them lose inductance to 1 kHz and 5 kHz as measured, and those on alnico rods none", () => {
    for (const { name, coils } of PICKUP_TYPES) {
      for (const { inductance, loss } of Object.values(coils)) {
        if (!Array.isArray(loss)) {
          expect(name).toMatch(/^single|^stacked/);
          continue;
        }
        const henries = Number.parseFloat(String(inductance));
        const at = (hertz: number) =>
          loss.reduce((sum, section) => {
            if (section.inductance === undefined) return sum;
            const [r, x] = [
              1000 * Number.parseFloat(String(section.resistance)),
              2 * Math.PI * hertz * Number.parseFloat(String(section.inductance)),
            ];
            return sum + (x * r * r) / (r * r + x * x) / (2 * Math.PI * hertz);
          }, henries);
        // Steel-cored coils 3–10 % to 1 kHz and 9–33 % to 5 kHz; closed covers up to 41 %.
        expect(1 - at(1000) / at(120), name).toBeGreaterThan(0.005);
        expect(1 - at(1000) / at(120), name).toBeLessThan(0.15);
        expect(1 - at(5000) / at(120), name).toBeGreaterThan(0.09);
        expect(1 - at(5000) / at(120), name).toBeLessThan(0.41);
      }
    }
  });
});
