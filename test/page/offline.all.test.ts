import { once } from "node:events";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { choosePosition, featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage, type Visit } from "./browser.ts";
import { noteSounds, playedCount } from "./played.ts";

/** Waits until the page has kept itself, whole. */
async function kept(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
}

/** The service behind an address of its own, with another service worker as soon as a version is named: as after an upgrade. */
async function upgradable(origin: string, version: () => string) {
  const server = createServer(async (request, response) => {
    const answer = await fetch(`${origin}${request.url}`);
    const body = Buffer.from(await answer.arrayBuffer());
    const isWorker = request.url === "/sw.js";
    for (const name of ["content-type", "content-security-policy", "cache-control"])
      response.setHeader(name, answer.headers.get(name) ?? "");
    response.writeHead(answer.status).end(isWorker ? `${body}\n// ${version()}` : body);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(resolve));
    },
  };
}

describeWith("chromium", "the page without a net", () => {
  const site = usePage();

  async function visitAndCutOff(): Promise<Visit> {
    const visit = await site.visit({ keepsItself: true, before: noteSounds });
    const { page, context } = visit;
    await whenReady(page);
    await kept(page);
    await context.setOffline(true);
    await page.reload();
    await whenReady(page);
    return visit;
  }

  it("opens, turns, plays, has sheet, readings and every guard; what needs the service says so and goes on when it is there", async () => {
    const visit = await visitAndCutOff();
    const { page, context } = visit;
    await openScenario(page, /HSS/);
    const before = await featuresOf(page);
    await choosePosition(page, 4);
    await expect.poll(() => featuresOf(page)).not.toBe(before);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await page.getByRole("button", { name: "Stop" }).waitFor();
    await expect.poll(() => playedCount(page)).toBe(1);
    await page.getByRole("button", { name: "Stop" }).click();
    await showTab(page, "Solder");
    await page
      .locator("#panel-solder")
      .getByLabel(/^Joint 1\./)
      .waitFor();
    await showTab(page, "Measure");
    await page.locator("#panel-measure tbody tr").first().waitFor();
    for (const tab of ["Parts", "Wires", "Hear them all", "Blind test", "A against B", "Which part?", "Send it"]) {
      await showTab(page, tab);
      expect(await page.locator(".tab-panel:not([hidden])").textContent(), tab).not.toContain("could not be loaded");
    }
    expectQuiet(visit);

    await showTab(page, "Send it");
    await page.getByRole("button", { name: "Copy a link to this guard" }).click();
    await page.locator("#service-wait").getByText("cannot be reached now").waitFor();
    await context.setOffline(false);
    await expect.poll(() => page.getByLabel("The link").inputValue()).toContain("/b/");
    await expect.poll(() => page.locator("#service-wait").isVisible()).toBe(false);

    await context.setOffline(true);
    await page.getByRole("button", { name: "Copy a link to this guard" }).click();
    await page.getByRole("button", { name: "Do not wait" }).click();
    await expect.poll(() => page.locator(".notice").textContent()).toContain("The service cannot be reached");
  });

  it("keeps no answer of the service, and opens a link from the service", async () => {
    const visit = await site.visit({ keepsItself: true });
    const { page } = visit;
    await whenReady(page);
    await kept(page);
    await page.reload();
    await whenReady(page);
    const held = await page.evaluate(async () => {
      const caches = await window.caches.keys();
      const requests = await Promise.all(caches.map(async (name) => (await window.caches.open(name)).keys()));
      return requests.flat().map(({ url }) => new URL(url).pathname);
    });
    expect(held).toContain("/");
    expect(held.filter((path) => path.startsWith("/api") || path.startsWith("/b/"))).toEqual([]);
    const [answer] = await Promise.all([
      page.waitForResponse((response) => response.url().includes("/b/")),
      page.goto(`${site.origin}/b/1AAAA`),
    ]);
    expect(answer.fromServiceWorker()).toBe(false);
    expect(answer.status()).toBe(400);
  });

  it("tells of a newer version and loads it as a whole when asked", async () => {
    let version = "";
    const service = await upgradable(site.origin, () => version);
    try {
      const visit = await site.visit({ keepsItself: true, path: "/healthz" });
      const { page } = visit;
      await page.goto(service.origin);
      await whenReady(page);
      await kept(page);
      version = "newer";
      await page.reload();
      await whenReady(page);
      await page.getByText("There is a newer version of this page").waitFor();
      await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Load it" }).click()]);
      await whenReady(page);
      await kept(page);
      expect(await page.getByText("There is a newer version of this page").count()).toBe(0);
      expect(visit.complaints).toEqual([]);
    } finally {
      await service.close();
    }
  });
});
