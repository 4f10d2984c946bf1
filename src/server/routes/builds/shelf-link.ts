import { readFileSync } from "node:fs";
import { problemSchema } from "../../../contract/problem.ts";
import {
  type ShelfLinkContent,
  shelfLinkAnswerSchema,
  shelfLinkContentSchema,
  shelfLinkParamsSchema,
  shelfLinkRequestSchema,
} from "../../../contract/shelf-link.ts";
import { PresolderError } from "../../../errors.ts";
import { CACHED_FOR_A_WHILE } from "../../http/answers/caching.ts";
import { ASKED_FOR_EACH_TIME } from "../../http/page-files.ts";
import { brokenLinkPage } from "../../http/small-pages.ts";
import { decodeShelf, encodeShelf } from "../../links/link-code.ts";
import { describeShelf, pageFor } from "../../links/linked-page.ts";
import { publicOrigin } from "../../links/public-origin.ts";
import { PATHS } from "../../paths.ts";
import type { App } from "../route-context.ts";

export async function shelfLinkRoutes(app: App): Promise<void> {
  app.post(
    "/api/shelf-link",
    {
      config: { gate: "render" },
      schema: {
        summary: "A link that carries a shelf of guards in itself; nothing is stored",
        tags: ["builds"],
        body: shelfLinkRequestSchema,
        response: { 200: shelfLinkAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request) => {
      const code = encodeShelf(request.body);
      return { code, url: `${publicOrigin(request)}/s/${code}` };
    },
  );

  app.get(
    "/api/shelf-link/:code",
    {
      schema: {
        summary: "What a shelf's link carries",
        tags: ["builds"],
        params: shelfLinkParamsSchema,
        response: { 200: shelfLinkContentSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const content = decodeShelf(request.params.code);
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return content as ShelfLinkContent;
    },
  );

  app.get("/s/:code", { schema: { hide: true, params: shelfLinkParamsSchema } }, async (request, reply) => {
    reply.type("text/html; charset=utf-8");
    try {
      const described = describeShelf(decodeShelf(request.params.code).guards.length);
      const page = pageFor(readFileSync(PATHS.page, "utf8"), described);
      return reply.header("cache-control", ASKED_FOR_EACH_TIME).send(page);
    } catch (error) {
      if (!(error instanceof PresolderError)) throw error;
      return reply
        .code(400)
        .header("cache-control", "no-store")
        .send(brokenLinkPage([error.message]));
    }
  });
}
