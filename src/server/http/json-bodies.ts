import type { App } from "../routes/route-context.ts";
import { parseJson } from "./json.ts";

/** Reads JSON bodies in place of Fastify's own parser, whose refusals do not say what was expected. */
export function readJsonBodies(app: App): void {
  app.removeContentTypeParser("application/json");
  app.addContentTypeParser("application/json", { parseAs: "string" }, async (_request: unknown, text: string) =>
    parseJson(text, "body"),
  );
}
