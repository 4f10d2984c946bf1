import {
  roomAnswerSchema,
  roomRequestSchema,
  roomTemplateAnswers,
  roomTemplateRequestSchema,
} from "../../../contract/bench/room.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { asBuffer } from "../../http/answers/byte-ranges.ts";
import { roomJob, roomTemplateJob } from "../../jobs/bench/room.ts";
import { templatePdf } from "../../paper/template-pdf.ts";
import { templateSvg } from "../../paper/template-svg.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function roomRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/room",
    {
      config: { gate: roomJob.gate },
      schema: {
        summary:
          "Whether the loaded guard goes into a body: the room beside, below and between its parts, the least first",
        tags: ["bench"],
        body: roomRequestSchema,
        response: { 200: roomAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("room", roomJob.read(request.body), callerOf(request, reply)),
  );

  app.post(
    "/api/room/template",
    {
      config: { gate: roomTemplateJob.gate },
      schema: {
        summary: "A guard's holes over a body's cavities at 1:1, with a bar to check the printer by",
        tags: ["bench"],
        body: roomTemplateRequestSchema,
        response: { 200: roomTemplateAnswers, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { format, ...body } = request.body;
      const drawing = await runJob("roomTemplate", roomTemplateJob.read(body), callerOf(request, reply));
      reply.header("content-disposition", `attachment; filename="template.${format}"`);
      if (format === "svg") return reply.type("image/svg+xml").serializer(String).send(templateSvg(drawing));
      return reply.type("application/pdf").send(asBuffer(await templatePdf(drawing)));
    },
  );
}
