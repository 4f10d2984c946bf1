import { describe, expect, it } from "vitest";
import { withFittedCoil, withFoundValues } from "../../src/page/choice/put-values.ts";
import { KnownGuard } from "../../src/page/engine/known-guard.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { onePickup } from "../fixtures/circuits.ts";

const OPEN = { volume: 10, tone: 10 };

function levels(source: BuildSource): Float64Array {
  const result = readSource(source);
  if (!("reading" in result)) throw new Error(JSON.stringify(result.faults));
  return new KnownGuard(result.reading).curveIn(OPEN).magnitude;
}

const pot = (values: object) => ({ kind: "pot", role: "volume", taper: "audio", ...values });
const withVolume = (values: object) => onePickup({ parts: { volume: pot(values) } }) as BuildSource;

describe("values put into a guard", () => {
  it("of a pot count where another one's track had been measured", () => {
    const put = withFoundValues(withVolume({ resistance: "250k", measured: "231k" }), [
      { name: "volume", unit: "ohms", value: 500e3 },
    ]);
    expect(put.parts.volume).toEqual(pot({ resistance: "500k" }));
    expect(levels(put)).toEqual(levels(withVolume({ resistance: "500k" })));
  });

  it("leave alone what no field holds: what is left out, a taper, the cable", () => {
    const source = withVolume({ resistance: "250k", measured: "231k" });
    const values = [
      { name: "cap", unit: "farads", value: null },
      { name: "volume at half rotation", unit: "fraction", value: 0.2 },
      { name: "cable", unit: "metres", value: 3 },
    ] as const;
    expect(withFoundValues(source, values)).toEqual(source);
  });

  it("of a fitted coil take the place of all its electrical values, a loss that the fit has not found included", () => {
    const before = onePickup({
      pickup: {
        kind: "pickup",
        coils: { coil: { resistance: "6k", inductance: "2H", loss: "200k", distance: "41mm" } },
      },
    }) as BuildSource;
    const after = withFittedCoil(before, ["pickup", "coil"], {
      resistance: 6400,
      inductance: 2.6,
      capacitance: 120e-12,
    });
    expect((after.parts.pickup!.coils as Record<string, unknown>).coil).toEqual({
      resistance: 6400,
      inductance: 2.6,
      capacitance: 120e-12,
      distance: "41mm",
    });
  });
});
