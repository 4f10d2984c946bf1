import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";

export interface VisitOptions {
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  /** What is to be in place before the page is asked for. */
  readonly prepare?: (page: Page) => Promise<void>;
}

/** A page with all that it complained about and all that it asked for elsewhere. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: string[];
  readonly strangers: string[];
}

/** Chromium's own requests to itself, such as a download's blob. */
const OWN_SCHEMES = ["blob:", "data:", "chrome-extension:", "about:"];

async function openVisit(browser: Browser, options: VisitOptions, origin: string): Promise<Visit> {
  const { width = 1280, height = 900, colorScheme = "light" } = options;
  const context = await browser.newContext({ viewport: { width, height }, colorScheme, acceptDownloads: true });
  const page = await context.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !OWN_SCHEMES.some((scheme) => url.startsWith(scheme))) strangers.push(url);
  });
  return { page, context, complaints, strangers };
}

/** The run's service, and its browser on the page; see site.ts. */
export function usePage() {
  const origin = inject("origin");
  let browser: Browser | undefined;
  const open: Visit[] = [];
  beforeAll(async () => {
    browser = await chromium.connect(inject("browser"));
  });
  afterEach(async () => {
    for (const { context } of open.splice(0)) await context.close();
  });
  afterAll(() => browser?.close());
  return {
    origin,
    /** Opens the page as somebody who has never been there: nothing stored, nothing cached. */
    async visit(options: VisitOptions = {}): Promise<Visit> {
      const visit = await openVisit(browser!, options, origin);
      open.push(visit);
      await options.prepare?.(visit.page);
      await visit.page.goto(`${origin}${options.path ?? "/"}`);
      return visit;
    },
  };
}

/** Nothing to complain about and nothing asked for elsewhere. */
export function expectQuiet({ complaints, strangers }: Visit): void {
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
}
