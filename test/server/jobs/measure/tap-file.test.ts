import { expect, it } from "vitest";
import { tapsRequestSchema } from "../../../../src/contract/measure/taps.ts";
import { tapInputOf } from "../../../../src/server/jobs/measure/tap-file.ts";

const inputOf = (input?: object) => tapInputOf(tapsRequestSchema.parse({ build: {}, ...(input ? { input } : {}) }));

it("takes what is not said of the input to be as usual", () => {
  expect(inputOf()).toEqual({ resistance: 1e6, capacitance: 400e-12 });
  expect(inputOf({ resistance: "470k" })).toEqual({ resistance: 470e3, capacitance: 400e-12 });
  expect(inputOf({ capacitance: "100p" })).toEqual({ resistance: 1e6, capacitance: expect.closeTo(100e-12, 15) });
  expect(inputOf({ capacitance: 0 }).capacitance).toBe(0);
});
