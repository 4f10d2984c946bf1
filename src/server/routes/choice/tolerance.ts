import { z } from "zod";
import { Controls, parseSettings } from "../../../build-file/settings.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { drawsFields, percentilesAnswer, spreadAnswer } from "../../../contract/choice-schemas.ts";
import { buildField, settingsField } from "../../../contract/fields.ts";
import { logSpaced } from "../../../response/frequencies.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readBuildAt } from "../../http/validation.ts";
import type { App, RouteContext } from "../route-context.ts";

/** Enough to draw a band; every point is sorted over all draws. */
const MAX_POINTS = 512;
const POINTS = 128;

const bodySchema = strict({
  build: buildField,
  settings: settingsField.default({}),
  points: z.int().min(8).max(MAX_POINTS).default(POINTS).describe("frequencies from 20 Hz to 20 kHz, log spaced"),
  ...drawsFields,
});

const list = (meaning: string) => z.array(z.number()).describe(meaning);

const answerSchema = z.object({
  draws: z.int(),
  seed: z.int(),
  frequencies: list("Hz"),
  nominal: list("dB re the EMF of a coil with output 1, as the build says"),
  low: list("dB; 5 % of the guards lie under it"),
  middle: list("dB; half of the guards lie under it"),
  high: list("dB; 95 % of the guards lie under it"),
  peak: z.object({ frequency: percentilesAnswer, level: percentilesAnswer }).nullable(),
  peakShare: z.number().describe("the fraction of guards that have a peak"),
  cutoff: percentilesAnswer.nullable(),
  spread: spreadAnswer,
});

const rounded = (values: Float64Array) => Array.from(values, (value) => Math.round(value * 1e6) / 1e6);

export async function toleranceRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/tolerance",
    {
      schema: {
        summary: "What the parts' tolerances do to a curve: 5, 50 and 95 % of guards built from the list",
        tags: ["choice"],
        body: bodySchema,
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { draws, seed, points } = request.body;
      const build = readBuildAt("build", request.body.build);
      const settings = parseSettings(new Controls(build), request.body.settings);
      const job = { build, settings, draws, seed, frequenciesHz: logSpaced(20, 20_000, points) };
      const bands = await runJob("tolerance", job, callerOf(request, reply));
      const { frequencies, nominal, low, middle, high } = bands;
      return {
        ...bands,
        frequencies: rounded(frequencies),
        nominal: rounded(nominal),
        low: rounded(low),
        middle: rounded(middle),
        high: rounded(high),
      };
    },
  );
}
