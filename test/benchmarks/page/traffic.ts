import type { Page, Request } from "playwright-core";

export interface Traffic {
  readonly requests: number;
  /** Of scripts and style, compressed as they came. */
  readonly codeBytes: number;
}

async function bodyBytes(request: Request): Promise<number> {
  const { responseBodySize } = await request.sizes();
  if (responseBodySize > 0) return responseBodySize;
  // The browser tells no size for the script that a worker begins with.
  return Number((await request.response())?.headers()["content-length"] ?? 0);
}

/** Follows what the page asks for from now on; the call that comes back tells what it came to so far. */
export function followTraffic(page: Page): () => Promise<Traffic> {
  let requests = 0;
  const code: Request[] = [];
  page.on("request", () => {
    requests += 1;
  });
  page.on("requestfinished", (request) => {
    if (["script", "stylesheet"].includes(request.resourceType())) code.push(request);
  });
  return async () => {
    const sizes = await Promise.all(code.map(bodyBytes));
    return { requests, codeBytes: sizes.reduce((sum, size) => sum + size, 0) };
  };
}
