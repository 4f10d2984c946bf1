import { readFileSync } from "node:fs";
import { z } from "zod";
import { readBuild } from "../../../build-file/read-build.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { buildField } from "../../../contract/fields.ts";
import { PresolderError } from "../../../errors.ts";
import { MAX_LINK_CODE_CHARS } from "../../../limits.ts";
import { CACHED_FOR_A_WHILE } from "../../http/caching.ts";
import { problemSchema } from "../../http/problems.ts";
import { decodeLink, encodeLink } from "../../links/link-code.ts";
import { brokenLinkPage, pageFor } from "../../links/linked-page.ts";
import { PATHS } from "../../paths.ts";
import type { App } from "../route-context.ts";

const viewField = z
  .record(z.string().max(60), z.unknown())
  .describe("how the page looks at the build: settings, signal, …");
const paramsSchema = z.object({ code: z.string() });
const contentSchema = z.object({
  build: z.any().describe("the build file as it was written"),
  view: viewField.optional(),
});

export async function linkRoutes(app: App): Promise<void> {
  app.post(
    "/api/link",
    {
      schema: {
        summary: "A link that carries the build in itself; nothing is stored",
        tags: ["builds"],
        body: strict({ build: buildField, view: viewField.optional() }),
        response: {
          200: z.object({
            code: z.string().max(MAX_LINK_CODE_CHARS).describe("for `build=` of the GET calls"),
            url: z.string().describe("opens the page on this build"),
          }),
          "4xx": problemSchema,
        },
      },
    },
    async (request) => {
      const { build, view } = request.body;
      readBuild(build);
      const code = encodeLink(view === undefined ? { build } : { build, view });
      return { code, url: `${request.protocol}://${request.host}/b/${code}` };
    },
  );

  app.get(
    "/api/link/:code",
    {
      schema: {
        summary: "What a link carries",
        tags: ["builds"],
        params: paramsSchema,
        response: { 200: contentSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const content = decodeLink(request.params.code);
      readBuild(content.build);
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return content as z.output<typeof contentSchema>;
    },
  );

  // Browsers ask for it beside the icon that the page names.
  app.get("/favicon.ico", { schema: { hide: true } }, async (_request, reply) =>
    reply.type("image/svg+xml").header("cache-control", CACHED_FOR_A_WHILE).send(readFileSync(PATHS.icon)),
  );

  app.get("/b/:code", { schema: { hide: true, params: paramsSchema } }, async (request, reply) => {
    reply.type("text/html; charset=utf-8");
    try {
      const page = pageFor(readFileSync(PATHS.page, "utf8"), readBuild(decodeLink(request.params.code).build));
      return reply.header("cache-control", CACHED_FOR_A_WHILE).send(page);
    } catch (error) {
      if (!(error instanceof PresolderError)) throw error;
      const reasons = error.faults.map(({ path, message }) => (path === "code" ? message : `${path}: ${message}`));
      return reply.code(400).header("cache-control", "no-store").send(brokenLinkPage(reasons));
    }
  });
}
