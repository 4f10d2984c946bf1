import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";

export interface VisitOptions {
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  /** Whether the page may keep itself for a workshop without a net; otherwise every visit comes from the service. */
  readonly keepsItself?: boolean;
  /** Whether it is to share nothing at all with visits before it, as where its loading is timed. */
  readonly ownWindow?: boolean;
  /** Whether the page works nothing out ahead, as where somebody saves data: so it is unless told otherwise. */
  readonly isThrifty?: boolean;
  /** What is to be done with the page before its first script runs. */
  readonly before?: (page: Page) => Promise<void>;
}

/** A page with all that it complained about and all that it asked for elsewhere. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: string[];
  readonly strangers: string[];
}

/** What keeping the page from keeping itself makes of it. */
const BLOCKED = "Service Worker registration blocked by Playwright";

/** Chromium's own requests to itself, such as a download's blob. */
const OWN_SCHEMES = ["blob:", "data:", "chrome-extension:", "about:"];

/** Runs in the browser: as where somebody saves data, so that a test waits for nothing that it did not ask for. */
function saveData(): void {
  Object.defineProperty(navigator, "connection", { value: { saveData: true } });
}

function newContext(browser: Browser, { keepsItself = false }: VisitOptions): Promise<BrowserContext> {
  return browser.newContext({ acceptDownloads: true, serviceWorkers: keepsItself ? "allow" : "block" });
}

/** Leaves nothing stored and nothing cached for the next visit. */
async function leave(page: Page, origin: string): Promise<void> {
  // The page keeps its draft as it is left.
  await page.goto("about:blank");
  const session = await page.context().newCDPSession(page);
  await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await session.send("Network.clearBrowserCache");
  await page.close();
}

async function openVisit(context: BrowserContext, options: VisitOptions, origin: string): Promise<Visit> {
  const { isThrifty = true, keepsItself = false } = options;
  const page = await context.newPage();
  if (isThrifty && !keepsItself) await page.addInitScript(saveData);
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type()) && message.text() !== BLOCKED) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !OWN_SCHEMES.some((scheme) => url.startsWith(scheme))) strangers.push(url);
  });
  return { page, context, complaints, strangers };
}

async function show(page: Page, { width = 1280, height = 900, colorScheme = "light" }: VisitOptions): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme, media: null });
}

/** The run's service, and its browser on the page; see site.ts. */
export function usePage() {
  const origin = inject("origin");
  let browser: Browser | undefined;
  let lasting: Visit | undefined;
  /** A context of its own is a window of its own, which takes longer to open than the page: one serves one visit after the other. */
  let shared: BrowserContext | undefined;
  const open: Visit[] = [];
  const enter = async (options: VisitOptions, context: BrowserContext): Promise<Visit> => {
    const visit = await openVisit(context, options, origin);
    await show(visit.page, options);
    await options.before?.(visit.page);
    await visit.page.goto(`${origin}${options.path ?? "/"}`);
    return visit;
  };
  beforeAll(async () => {
    browser = await chromium.connect(inject("browser"));
  });
  afterEach(async ({ task }) => {
    // What a failure left half done would fail the next, and the second try.
    if (task.result?.state === "fail") {
      await lasting?.context.close();
      lasting = undefined;
    }
    for (const { context, page } of open.splice(0)) {
      if (context === shared) await leave(page, origin);
      else await context.close();
    }
  });
  afterAll(async () => {
    await lasting?.context.close();
    await shared?.close();
    await browser?.close();
  });
  return {
    origin,
    /** Opens the page as somebody who has never been there: nothing stored, nothing cached. */
    async visit(options: VisitOptions = {}): Promise<Visit> {
      // Whoever comes while another is there is another person, and so is a page that keeps itself.
      const isShared = open.length === 0 && !options.keepsItself && !options.ownWindow;
      if (isShared) shared ??= await newContext(browser!, options);
      const visit = await enter(options, isShared ? shared! : await newContext(browser!, options));
      open.push(visit);
      return visit;
    },
    /**
     * The page as the test before left it, or anew where that failed, for those that begin by opening a guard: to load it takes
     * longer than most of them.
     */
    async stay(options: Pick<VisitOptions, "width" | "height" | "colorScheme"> = {}): Promise<Visit> {
      lasting ??= await enter({}, await newContext(browser!, {}));
      await show(lasting.page, options);
      return lasting;
    },
  };
}

/** Nothing to complain about and nothing asked for elsewhere. */
export function expectQuiet({ complaints, strangers }: Visit): void {
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
}
