import type { App } from "../routes/route-context.ts";
import { parseJson } from "./json.ts";
import { turns } from "./turns.ts";

/** What takes more than a millisecond to parse and to validate. */
const LONG_CHARS = 1 << 14;

/** Reads JSON bodies in place of Fastify's own parser, whose refusals do not say what was expected. */
export function readJsonBodies(app: App): void {
  app.removeContentTypeParser("application/json");
  app.addContentTypeParser("application/json", { parseAs: "string" }, async (_request: unknown, text: string) => {
    if (text.length <= LONG_CHARS) return parseJson(text, "body");
    await turns.next();
    const body = parseJson(text, "body");
    // It is validated next, which takes as long again.
    await turns.next();
    return body;
  });
}
