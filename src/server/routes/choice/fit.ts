import { z } from "zod";
import { LOSS_MODELS } from "../../../choice/fit/coil-shapes.ts";
import type { Fit } from "../../../choice/fit/fit-problem.ts";
import { rangeFromResistance } from "../../../choice/fit/resistance-range.ts";
import { callerOf } from "../../care/caller.ts";
import { fitBodySchema, fitJobOf } from "../../fit-request.ts";
import { problemSchema } from "../../http/problems.ts";
import type { FitJob } from "../../work/choice-jobs.ts";
import type { App, RouteContext } from "../route-context.ts";

const valueAnswer = z.object({
  name: z.string().describe("as in the build file's coil"),
  value: z.number().describe("SI units"),
  relativeError: z.number().describe("standard error as a fraction"),
  standardError: z.number(),
  low: z.number().describe("95 % confidence, from here"),
  high: z.number(),
});

const residualAnswer = z.object({
  of: z.enum(["magnitude", "phase", "frequency"]),
  frequency: z.number().describe("Hz"),
  error: z.number().describe("measured minus fitted: a fraction for magnitude and frequency, radians for phase"),
});

const fittedAnswer = z.object({
  method: z.enum(["resonances", "impedance", "response"]),
  coil: z
    .object({
      resistance: z.number(),
      inductance: z.number(),
      capacitance: z.number(),
      loss: z.union([z.number(), z.array(z.object({ resistance: z.number(), inductance: z.number() }))]).optional(),
    })
    .describe("to be dropped into the build file's coil"),
  lossModel: z.enum(LOSS_MODELS),
  values: z.array(valueAnswer),
  lowFrequencyInductance: valueAnswer,
  precision: z.object({
    value: z.number().describe("relative standard deviation of the measurements"),
    estimated: z.boolean().describe("found from the residuals"),
  }),
  degreesOfFreedom: z.int(),
  condition: z.number().describe("of the scaled Jacobian"),
  considered: z
    .array(
      z.object({ loss: z.enum(LOSS_MODELS), aicc: z.number().nullable(), usable: z.boolean(), reason: z.string() }),
    )
    .describe("the loss models tried; the least AICc among the usable ones is taken"),
  residuals: z.array(residualAnswer),
  notes: z.array(z.string()),
});

const range = z.object({ low: z.number(), high: z.number() });
const rangeAnswer = z.object({
  method: z.literal("resistance"),
  ranges: z.object({ resistance: z.number(), inductance: range, capacitance: range, loss: range }),
  basis: z.string(),
});

const answerSchema = z.union([fittedAnswer, rangeAnswer]);

type Fitted = z.output<typeof fittedAnswer>;

function residualsOf(job: FitJob, errors: Float64Array): Fitted["residuals"] {
  if (job.method === "resonances")
    return job.readings.map(({ frequencyHz }, i) => ({ of: "frequency", frequency: frequencyHz, error: errors[i]! }));
  const { frequenciesHz } = job.table;
  return Array.from(errors, (error, i) => ({
    of: i < frequenciesHz.length ? "magnitude" : "phase",
    frequency: frequenciesHz[i % frequenciesHz.length]!,
    error,
  }));
}

function fittedFrom(job: FitJob, fit: Fit): Fitted {
  const { coil, loss, values, lowFrequencyInductance, precision, degreesOfFreedom, condition, considered, notes } = fit;
  const { loss: coilLoss, ...core } = coil;
  return {
    method: job.method,
    coil: coilLoss === undefined ? core : { ...core, loss: coilLoss },
    lossModel: loss,
    values: [...values],
    lowFrequencyInductance,
    precision,
    degreesOfFreedom,
    condition,
    considered: [...considered],
    residuals: residualsOf(job, fit.errors),
    notes: [...notes],
  };
}

export async function fitRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/fit",
    {
      schema: {
        summary: "A coil's values from what was measured, with their uncertainty",
        description: "422 where the measurements cannot tell, with what to measure besides",
        tags: ["choice"],
        body: fitBodySchema,
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { body } = request;
      if (body.method === "resistance") {
        const { basis, ...ranges } = rangeFromResistance(body.type, body.resistance);
        return { method: "resistance" as const, ranges, basis };
      }
      const job = fitJobOf(body);
      return fittedFrom(job, await runJob("fit", job, callerOf(request, reply)));
    },
  );
}
