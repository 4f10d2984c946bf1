/** Kept, but asked about every time, since the next version of it goes by the same address; a 304 answers in no time. */
export const ASKED_FOR_EACH_TIME = "no-cache";
/** Its address changes with its content. */
const KEPT_FOR_GOOD = "public, max-age=31536000, immutable";

const VERSIONED = /\/built\/[0-9a-f]{8,}\/[^/]+$/;

/** How long a browser may keep one of the page's files without asking. @param path of the file */
export function keepingOf(path: string): string {
  return VERSIONED.test(path.replaceAll("\\", "/")) ? KEPT_FOR_GOOD : ASKED_FOR_EACH_TIME;
}
