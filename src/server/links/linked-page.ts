import type { Build } from "../../build-file/schema.ts";
import { escapeHtml } from "../http/small-pages.ts";

interface Description {
  readonly title: string;
  readonly description: string;
}

/** What a link shows in a chat or a search: the guard's title and its pickups. */
export function describeBuild(build: Build): Description {
  const pickups = Object.entries(build.parts).flatMap(([name, part]) => (part.kind === "pickup" ? [name] : []));
  const count = `${pickups.length} pickup${pickups.length === 1 ? "" : "s"}`;
  const description =
    pickups.length === 0
      ? "A harness without pickups yet: check its wiring and see what a meter must read before soldering."
      : `A guard with ${count} (${pickups.join(", ")}): hear every switch position, see its curves and check its wiring before soldering.`;
  return {
    title: `${build.title || "A guard"} – Presolder`,
    description,
  };
}

/** The same of a shelf. */
export function describeShelf(count: number): Description {
  return {
    title: `${count === 1 ? "A guard" : `${count} guards`} for your shelf – Presolder`,
    description: "Guards to hear, check and compare; none is kept before you say so.",
  };
}

/** The page with a title and a description of its own. */
export function pageFor(page: string, described: Description): string {
  const title = escapeHtml(described.title);
  const description = escapeHtml(described.description);
  const head = [
    `<title>${title}</title>`,
    `<meta name="description" content="${description}">`,
    `<meta property="og:type" content="website">`,
    `<meta property="og:title" content="${title}">`,
    `<meta property="og:description" content="${description}">`,
  ].join("\n    ");
  // A function, since "$" in a title would mean something in a replacement text.
  return page.replace(/\s*<meta name="description"[^>]*>/, "").replace(/<title>[^<]*<\/title>/, () => head);
}
