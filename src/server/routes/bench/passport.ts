import { passportAnswers, passportRequestSchema } from "../../../contract/bench/passport.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { passportJob } from "../../jobs/bench/passport.ts";
import { encodeLink } from "../../links/link-code.ts";
import { publicOrigin } from "../../links/public-origin.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function passportRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/passport",
    {
      config: { gate: passportJob.gate },
      schema: {
        summary:
          "What is worth knowing of a guard years later: as JSON, as one page of A4, or as a label for the cavity",
        tags: ["bench"],
        body: passportRequestSchema,
        response: { 200: passportAnswers, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { build, format, drawing, address = publicOrigin(request) } = request.body;
      const job = passportJob.read(request.body);
      const link = `${address.replace(/\/+$/, "")}/b/${encodeLink({ build })}`;
      const caller = callerOf(request, reply);
      if (format === "json") return { link, ...(await runJob("passport", job, caller)) };
      const page = await runJob("passportPaper", { ...job, format, link, drawing }, caller);
      const name = format === "label" ? "guard-label.pdf" : "guard-passport.pdf";
      reply.header("content-disposition", `attachment; filename="${name}"`);
      return reply
        .type("application/pdf")
        .serializer((bytes: Uint8Array) => bytes as never)
        .send(page);
    },
  );
}
