import { readFileSync } from "node:fs";
import { readBuild } from "../../../build-file/read-build.ts";
import {
  type LinkContent,
  linkAnswerSchema,
  linkContentSchema,
  linkParamsSchema,
  linkRequestSchema,
} from "../../../contract/link.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { PresolderError } from "../../../errors.ts";
import { CACHED_FOR_A_WHILE } from "../../http/answers/caching.ts";
import { ASKED_FOR_EACH_TIME } from "../../http/page-files.ts";
import { brokenLinkPage } from "../../http/small-pages.ts";
import { decodeLink, encodeLink } from "../../links/link-code.ts";
import { describeBuild, pageFor } from "../../links/linked-page.ts";
import { publicOrigin } from "../../links/public-origin.ts";
import { PATHS } from "../../paths.ts";
import type { App } from "../route-context.ts";

export async function linkRoutes(app: App): Promise<void> {
  app.post(
    "/api/link",
    {
      config: { gate: "render" },
      schema: {
        summary: "A link that carries the build in itself; nothing is stored",
        tags: ["builds"],
        body: linkRequestSchema,
        response: { 200: linkAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request) => {
      const { build, view } = request.body;
      readBuild(build);
      const code = encodeLink(view === undefined ? { build } : { build, view });
      return { code, url: `${publicOrigin(request)}/b/${code}` };
    },
  );

  app.get(
    "/api/link/:code",
    {
      schema: {
        summary: "What a link carries",
        tags: ["builds"],
        params: linkParamsSchema,
        response: { 200: linkContentSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const content = decodeLink(request.params.code);
      readBuild(content.build);
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return content as LinkContent;
    },
  );

  // Browsers ask for it beside the icon that the page names.
  app.get("/favicon.ico", { schema: { hide: true } }, async (_request, reply) =>
    reply.type("image/svg+xml").header("cache-control", CACHED_FOR_A_WHILE).send(readFileSync(PATHS.icon)),
  );

  app.get("/b/:code", { schema: { hide: true, params: linkParamsSchema } }, async (request, reply) => {
    reply.type("text/html; charset=utf-8");
    try {
      const described = describeBuild(readBuild(decodeLink(request.params.code).build));
      const page = pageFor(readFileSync(PATHS.page, "utf8"), described);
      return reply.header("cache-control", ASKED_FOR_EACH_TIME).send(page);
    } catch (error) {
      if (!(error instanceof PresolderError)) throw error;
      const reasons = error.faults.map(({ path, message }) => (path === "code" ? message : `${path}: ${message}`));
      return reply.code(400).header("cache-control", "no-store").send(brokenLinkPage(reasons));
    }
  });
}
