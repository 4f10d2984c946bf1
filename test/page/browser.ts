import { mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { buildApp } from "../../src/server/app.ts";
import type { App } from "../../src/server/routes/route-context.ts";

const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--autoplay-policy=no-user-gesture-required",
];

export interface VisitOptions {
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
}

/** A page with all that it complained about and all that it asked for elsewhere. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: string[];
  readonly strangers: string[];
}

interface OpenVisit extends Visit {
  readonly profile: string;
}

/** Chromium's own requests to itself, such as a download's blob. */
const OWN_SCHEMES = ["blob:", "data:", "chrome-extension:", "about:"];

async function openBrowser(options: VisitOptions, origin: string): Promise<OpenVisit> {
  const profile = mkdtempSync(join(tmpdir(), "presolder-chromium-"));
  const { width = 1280, height = 900, colorScheme = "light" } = options;
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: "/usr/bin/chromium",
    args: FLAGS,
    viewport: { width, height },
    colorScheme,
    acceptDownloads: true,
  });
  const page = context.pages()[0] ?? (await context.newPage());
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
  return { page, context, complaints, strangers, profile };
}

/** The service on a port of its own, and browsers with fresh profiles on its page. */
export function usePage() {
  let app: App | undefined;
  let origin = "";
  const open: OpenVisit[] = [];
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
    await app.listen({ host: "127.0.0.1", port: 0 });
    origin = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`;
  });
  afterEach(async () => {
    for (const { context, profile } of open.splice(0)) {
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    }
  });
  afterAll(() => app?.close());
  return {
    get origin() {
      return origin;
    },
    /** Opens the page in a fresh profile and waits until a guard is on the bench. */
    async visit(options: VisitOptions = {}): Promise<Visit> {
      const visit = await openBrowser(options, origin);
      open.push(visit);
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
