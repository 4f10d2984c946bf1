import { readFileSync } from "node:fs";
import { PATHS } from "../paths.ts";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES[character]!);
}

let link: string | undefined;

/** The page's own, whose address changes with its content. */
function styleLink(): string {
  link ??= /<link rel="stylesheet"[^>]*>/.exec(readFileSync(PATHS.page, "utf8"))?.[0] ?? "";
  return link;
}

/** @param body HTML, whatever stems from a caller escaped */
function smallPage(title: string, body: readonly string[]): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>${title} – Presolder</title>
    <link rel="icon" href="/icon.svg" type="image/svg+xml">
    ${styleLink()}
  </head>
  <body>
    <main>
      <h1>${title}</h1>
      ${body.join("\n      ")}
    </main>
  </body>
</html>
`;
}

/** A page for a link that cannot be opened. */
export function brokenLinkPage(reasons: readonly string[]): string {
  return smallPage("This link cannot be opened", [
    `<ul>${reasons.map((reason) => `<li>${escapeHtml(reason)}</li>`).join("")}</ul>`,
    `<p>Ask whoever sent it to copy the whole link once more, or <a href="/">start with an empty bench</a>.</p>`,
  ]);
}

/** A page for an address where nothing is. */
export function missingPage(path: string): string {
  return smallPage("There is no such page", [
    `<p>Nothing is at ${escapeHtml(path)}. <a href="/">Go to the bench</a>.</p>`,
  ]);
}

/** The headers of a page that is sent before the service's own hooks have run. */
export const BARE_PAGE_HEADERS = {
  "content-type": "text/html; charset=utf-8",
  "cache-control": "no-store",
  "content-security-policy":
    "default-src 'none';style-src 'self';img-src 'self';base-uri 'none';form-action 'self';frame-ancestors 'none'",
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
} as const;
