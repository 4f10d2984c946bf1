import { readFileSync } from "node:fs";
import { escapeHtml } from "../http/small-pages.ts";
import { PATHS } from "../paths.ts";

/** A bound of `src/limits.ts` as the bundler found it: the reason is the comment that stands before it. */
interface Limit {
  readonly name: string;
  readonly value: number;
  readonly reason: string;
}

function limitEntry({ name, value, reason }: Limit): string {
  return `<dt><code>${name}</code> ${value.toLocaleString("en")}</dt><dd>${escapeHtml(reason)}</dd>`;
}

/** The readable reference: the calls, drawn by the viewer from the OpenAPI document, and every limit with its reason. */
export function referencePage(): string {
  const limits = JSON.parse(readFileSync(PATHS.limits, "utf8")) as Limit[];
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>The service's calls – Presolder</title>
    <link rel="icon" href="/icon.svg" type="image/svg+xml">
    <link rel="stylesheet" href="/reference/swagger-ui.css">
    <link rel="stylesheet" href="/reference/reference.css">
    <script defer src="/reference/swagger-ui-bundle.js"></script>
    <script defer src="/reference/reference.js"></script>
  </head>
  <body>
    <nav class="back"><a href="/">To the bench</a> · <a href="#limits">Limits</a> · <a href="/api/openapi.json">OpenAPI document</a></nav>
    <main>
      <div id="calls"><noscript><p>The calls are drawn by JavaScript; without it, read the OpenAPI document.</p></noscript></div>
      <section class="limits" id="limits">
        <h2>Limits</h2>
        <p>A request beyond a bound is refused, and told the field and the bound.</p>
        <dl>
          ${limits.map(limitEntry).join("\n          ")}
        </dl>
      </section>
    </main>
  </body>
</html>
`;
}
