import { expect, it } from "vitest";
import { examineRequestSchema } from "../../../../src/contract/examine/examine-request.ts";
import { tapsRequestSchema } from "../../../../src/contract/measure/taps.ts";
import { rigUnknowns, USUAL_INPUT } from "../../../../src/examine/model/rig-unknowns.ts";
import { USUAL_TAP_INPUT } from "../../../../src/measure/taps/tap-transfers.ts";
import { rigOf } from "../../../../src/server/jobs/measure/examine-rig.ts";
import { tapInputOf } from "../../../../src/server/jobs/measure/tap-file.ts";

const rigFor = (input?: object) => rigOf(examineRequestSchema.shape.rig.parse({ resistor: "47k", input })!, false);

const deviationOf = (input: object | undefined, field: string) =>
  rigUnknowns(rigFor(input)).find((each) => each.field === field)!.deviation;

it("takes of an interface's input as known what was said of it, and nothing else", () => {
  const half = { resistance: "2M" };
  expect(rigFor(half)).toMatchObject({ inputOhms: 2e6, inputFarads: USUAL_INPUT.farads });
  expect(deviationOf(half, "input.resistance")).toBeLessThan(deviationOf(undefined, "input.resistance"));
  expect(deviationOf(half, "input.capacitance")).toBe(deviationOf(undefined, "input.capacitance"));
  const other = { capacitance: "220p" };
  expect(rigFor(other)).toMatchObject({ inputOhms: USUAL_INPUT.ohms, inputFarads: 220e-12 });
  expect(deviationOf(other, "input.resistance")).toBe(deviationOf(undefined, "input.resistance"));
  expect(deviationOf(other, "input.capacitance")).toBeLessThan(deviationOf(undefined, "input.capacitance"));
});

it("hangs the usual lead on a jack that is tapped, where nothing is said of it", () => {
  const input = tapsRequestSchema.shape.input.parse({ resistance: "2M" });
  expect(tapInputOf({ input })).toEqual({ ...USUAL_TAP_INPUT, resistance: 2e6 });
});
