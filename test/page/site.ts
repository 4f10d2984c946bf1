import { once } from "node:events";
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { startService } from "../load/service.ts";
import { hasTool } from "../tools.ts";
import { ALONE } from "./flags.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the run's browser is reached. */
    browser: string;
    /** The address of the service whose page is tested. */
    origin: string;
  }
}

const FLAGS = [
  ...ALONE,
  "--autoplay-policy=no-user-gesture-required",
  // An instrument that beeps once a second.
  "--use-fake-device-for-media-stream",
];

/**
 * One service and one Chromium, on a fresh profile that goes with it, for all tests of the page: a start of either takes
 * longer than most of these tests. The service keeps nothing, and each visit has storage of its own.
 */
export default async function setup({ provide }: TestProject) {
  if (!hasTool("chromium")) return undefined;
  const [browser, service] = await Promise.all([
    chromium.launchServer({ executablePath: "/usr/bin/chromium", args: FLAGS }),
    startService({ WORKERS: "2" }),
  ]);
  provide("browser", browser.wsEndpoint());
  provide("origin", service.url);
  return async () => {
    const ended = once(service.child, "exit");
    service.child.kill("SIGTERM");
    await Promise.all([browser.close(), ended]);
  };
}
