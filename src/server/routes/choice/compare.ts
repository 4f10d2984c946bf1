import { z } from "zod";
import type { Build } from "../../../build-file/schema.ts";
import { Controls, expandSweep, type RawSettings, type RawSweep, type Settings } from "../../../build-file/settings.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../../../choice/compare/verdict.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED } from "../../../choice/tolerance/tolerance.ts";
import { drawsField, featuresAnswer, weightingField } from "../../../contract/choice-schemas.ts";
import { buildField, settingsField, sweepField } from "../../../contract/fields.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_DRAWN_CURVES } from "../../../limits.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readBuildAt, refusal } from "../../http/validation.ts";
import type { CompareJob } from "../../work/choice-jobs.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  builds: z
    .array(buildField)
    .min(1)
    .max(2)
    .describe("two builds; or one build to be compared with itself in two settings"),
  settings: z
    .union([settingsField, z.tuple([settingsField, settingsField])])
    .optional()
    .describe("of both builds, or a list of two: the first build's and the second's"),
  sweep: sweepField.optional(),
  signal: weightingField,
  tolerance: z
    .union([z.boolean(), drawsField])
    .optional()
    .describe(
      "whether to hold the difference against two guards built from the first's list; default true, with fewer guards the longer the sweep",
    ),
});

const settingsAnswer = z.record(z.string(), z.union([z.number(), z.string()]));

const rowAnswer = z.object({
  settings: z.tuple([settingsAnswer, settingsAnswer]).readonly(),
  label: z.string(),
  loudnessDifference: z.number().describe("LU, second minus first (K-weighting of ITU-R BS.1770)"),
  difference: z
    .array(z.number().nullable())
    .readonly()
    .describe("dB per band of `bands`, second minus first, loudness matched; null where too soft to be heard"),
  largest: z.object({
    difference: z.number().describe("dB"),
    frequency: z.number().describe("Hz, the band's middle"),
    band: z.tuple([z.number(), z.number()]).readonly(),
  }),
  rms: z.number().describe("dB over the bands heard"),
  features: z.tuple([featuresAnswer, featuresAnswer]).readonly(),
  peakShift: z
    .object({
      shiftHz: z.number().describe("second minus first"),
      jndHz: z.number().describe("just noticeable: 0.079·Fr/√Q, Gagné and Zurek 1988"),
      inJnd: z.number(),
      q: z.number().describe("of the blunter peak, from its height"),
      extrapolated: z.boolean().describe("outside 300–2000 Hz or Q 1–36, where it was measured"),
    })
    .nullable(),
  cutoffShift: z.number().nullable().describe("Hz, second minus first"),
  audible: z.enum(AUDIBILITIES),
  verdict: z.string(),
  tolerance: z
    .object({
      median: z.number().describe("dB; half of the pairs of guards from one list differ by no more"),
      high: z.number().describe("dB; 95 % of the pairs differ by no more"),
      exceeded: z.boolean(),
    })
    .nullable(),
});

const answerSchema = z.object({
  weighting: z.string().describe("the signal, or flat"),
  bands: z
    .array(z.object({ low: z.number(), high: z.number(), centre: z.number() }))
    .readonly()
    .describe("ERB bands, Hz"),
  rows: z.array(rowAnswer).readonly(),
  verdict: z.string(),
  basis: z.string(),
  drawn: z
    .object({ draws: z.int(), seed: z.int() })
    .nullable()
    .describe("guards drawn for the tolerance; null where it was left out"),
});

type Body = z.output<typeof bodySchema>;

function sweepOf(build: Build, sweep: RawSweep | undefined, settings: RawSettings | undefined): Settings[] {
  return expandSweep(new Controls(build), sweep, settings);
}

function buildsOf({ builds, settings }: Body): readonly [Build, Build] {
  const [first, second] = builds.map((build, index) => readBuildAt(`builds.${index}`, build));
  if (second) return [first!, second];
  if (Array.isArray(settings)) return [first!, first!];
  const message = "has one build and one setting; expected two builds, or a list of two settings";
  throw refusal("REQUEST_INVALID", [{ path: "builds", message }]);
}

/** Where nobody says how many guards to draw, a long sweep gets fewer: about a second of work, 200 pairs at least. */
const USUAL_DRAWN_CURVES = 24_000;
const FEWEST_USUAL_DRAWS = 400;

function usualDraws(rows: number): number {
  return Math.max(FEWEST_USUAL_DRAWS, Math.min(DEFAULT_DRAWS, Math.floor(USUAL_DRAWN_CURVES / rows)));
}

function toleranceOf({ tolerance = true }: Body, rows: number): CompareJob["tolerance"] {
  if (tolerance === false) return null;
  const wanted = tolerance === true ? { draws: usualDraws(rows), seed: DEFAULT_SEED } : tolerance;
  if (wanted.draws * rows <= MAX_DRAWN_CURVES) return wanted;
  // A sweep too long even for few guards goes without, unless they were asked for.
  if (tolerance === true) return null;
  const most = Math.floor(MAX_DRAWN_CURVES / wanted.draws);
  const message = `asks for ${wanted.draws} guards in ${rows} settings; expected at most ${most} settings, or false`;
  throw faultAt("LIMIT_EXCEEDED", "tolerance", message);
}

function jobOf(body: Body): CompareJob {
  const builds = buildsOf(body);
  const [first, second] = Array.isArray(body.settings) ? body.settings : [body.settings, body.settings];
  const settings = [sweepOf(builds[0], body.sweep, first), sweepOf(builds[1], body.sweep, second)] as const;
  if (settings[0].length !== settings[1].length) {
    const message = `gives ${settings[0].length} settings of the first build and ${settings[1].length} of the second; name axes both have`;
    throw refusal("SETTINGS_INVALID", [{ path: "sweep", message }]);
  }
  return { builds, settings, signal: body.signal, tolerance: toleranceOf(body, settings[0].length) };
}

export async function compareRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/compare",
    {
      schema: {
        summary:
          "Whether two builds or settings can be told apart, and whether the difference beats the parts' tolerance",
        tags: ["choice"],
        body: bodySchema,
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = jobOf(request.body);
      return { ...(await runJob("compare", job, callerOf(request, reply))), drawn: job.tolerance };
    },
  );
}
