import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { showTab, whenReady } from "./actions.ts";
import { usePage } from "./browser.ts";
import { TABS } from "./tabs.ts";

const FIRST_SCREEN_BYTES = 90_000;
const PANEL_BYTES = 40_000;
describeWith("chromium", "the page's weight on the wire", () => {
  const site = usePage();

  it("is at most 90 kB of script and style for the first screen, and 40 kB for any panel or worker", async () => {
    const { page } = await site.visit({ path: "/healthz" });
    const loaded: { readonly name: string; readonly bytes: number }[] = [];
    page.on("response", async (response) => {
      const name = new URL(response.url()).pathname.split("/").at(-1)!;
      if (!/\.(js|css)$/.test(name)) return;
      loaded.push({ name, bytes: Number(await response.headerValue("content-length")) });
    });
    const sumOf = (files: typeof loaded) => files.reduce((sum, { bytes }) => sum + bytes, 0);
    /** A worker weighs by itself, and may still be coming when the next panel is opened. */
    const isWorker = ({ name }: { readonly name: string }) => name.endsWith("-worker.js");
    const expectLight = (panel: string) => {
      expect(sumOf(loaded.filter((file) => !isWorker(file))), panel).toBeLessThanOrEqual(PANEL_BYTES);
      for (const { name, bytes } of loaded.filter(isWorker)) expect(bytes, name).toBeLessThanOrEqual(PANEL_BYTES);
    };
    await page.goto(site.origin);
    await page.locator(".plot canvas").waitFor();
    // What the page itself names, and the worker that draws the first curve.
    const named = await page
      .locator("script[src], link[rel='stylesheet'], link[rel='modulepreload']")
      .evaluateAll((all) => all.map((each) => each.getAttribute("src") ?? each.getAttribute("href")!));
    const first = [...named.map((path) => path.split("/").at(-1)!), "curve-worker.js"];
    expect(first.some((name) => name.startsWith("part-curves-panel"))).toBe(true);
    await expect.poll(() => loaded.map(({ name }) => name)).toEqual(expect.arrayContaining(first));
    const needed = loaded.filter(({ name }) => first.includes(name));
    expect(sumOf(needed)).toBeGreaterThan(30_000);
    expect(sumOf(needed)).toBeLessThanOrEqual(FIRST_SCREEN_BYTES);

    await whenReady(page);
    await page.locator(".found .findings, .found .all-well").waitFor();
    for (const { name, bytes } of loaded.filter((file) => !first.includes(file.name)))
      expect(bytes, name).toBeLessThanOrEqual(PANEL_BYTES);
    // The first stands open from the start.
    for (const tab of TABS.slice(1)) {
      loaded.length = 0;
      await showTab(page, tab);
      expectLight(tab);
    }
    await showTab(page, "Which part?");
    loaded.length = 0;
    await page.getByText("Measure a pickup, cap, pot or lead with an audio interface").click();
    await page.locator(".sound-card").waitFor();
    expect(loaded.length).toBeGreaterThan(0);
    expectLight("sound card");
    await showTab(page, "Measure");
    loaded.length = 0;
    await page.getByText("Examine the finished guard with an audio interface").click();
    await page.getByRole("region", { name: "Examining the finished guard" }).waitFor();
    expect(loaded.length).toBeGreaterThan(0);
    expectLight("examination");
    await showTab(page, "Solder");
    loaded.length = 0;
    await page.getByRole("button", { name: "Solder joint by joint" }).click();
    await page.locator("dialog[open] h2").waitFor();
    expect(loaded.length).toBeGreaterThan(0);
    expectLight("joint by joint");
  });
});
