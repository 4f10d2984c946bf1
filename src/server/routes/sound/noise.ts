import { noiseAnswerSchema, noiseRequestSchema } from "../../../contract/noise.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { noiseJob } from "../../jobs/sound/noise.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function noiseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/noise",
    {
      config: { gate: noiseJob.gate },
      schema: {
        summary: "Hum and hiss of every position, in microvolts and beside the string, and what would help",
        description:
          "Hum of a stated room in the coils, in the loops that the wires enclose as they lie, and in open wires; thermal noise of the loaded " +
          "circuit and the amplifier input's own. What foil, twisting, screened wire and a reverse-wound pickup would leave is worked out on the " +
          "guard with that change. `noise` of a preview makes the same heard.",
        tags: ["sound"],
        body: noiseRequestSchema,
        response: { 200: noiseAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("noise", noiseJob.read(request.body), callerOf(request, reply)),
  );
}
