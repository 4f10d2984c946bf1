import { expect, it } from "vitest";
import { LARGE_DRAWER } from "../../choice/buildable/heaps.ts";
import { describeWith } from "../../tools.ts";
import { showTab, whenReady } from "../actions.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { openShelf } from "../shelf/shelf-page.ts";

const FILE = `{"presolderDrawer":1,"drawer":${JSON.stringify(LARGE_DRAWER)}}`;

describeWith("chromium", "a search that takes long", () => {
  const site = usePage();

  it("in the drawer is stopped, in the service too, and the panel serves meanwhile", async () => {
    const visit = await site.visit({ width: 390, height: 844 });
    const { page } = visit;
    const gone = async () => {
      const text = await (await page.request.get(new URL("/metrics", page.url()).href)).text();
      return Number(/^presolder_clients_gone_total (\d+)/m.exec(text)![1]);
    };
    await whenReady(page);
    await openShelf(page);
    await page.getByRole("tab", { name: "Drawer" }).click();
    const drawer = page.locator(".drawer");
    const file = { name: "large.drawer.json", mimeType: "application/json", buffer: Buffer.from(FILE) };
    await drawer.getByLabel("Open a drawer file").setInputFiles(file);
    await drawer.getByText("The drawer is that of “large.drawer.json”.").waitFor();
    const before = await gone();
    const search = drawer.getByRole("button", { name: "What can I build" });
    await search.click();
    await drawer.getByText(/^Working since \d/).waitFor();
    const stop = drawer.getByRole("button", { name: "Stop", exact: true });
    const smallest = async () => {
      const box = await stop.boundingBox();
      return box ? Math.min(box.height, box.width) : 0;
    };
    await expect.poll(smallest).toBeGreaterThanOrEqual(43.5);
    await bringAxe(page);
    expect(await seriousFindings(page, ".drawer")).toEqual([]);
    await drawer.getByLabel("Prices are in").fill("coins");
    await drawer.getByLabel("Prices are in").blur();
    await expect.poll(() => drawer.getByText(/^Working since \d/).count()).toBe(1);
    await stop.click();
    await drawer.getByText("Stopped.", { exact: true }).waitFor();
    expect(await search.evaluate((each) => each === document.activeElement)).toBe(true);
    expect(await search.isEnabled()).toBe(true);
    await expect.poll(gone).toBe(before + 1);
    expectQuiet(visit);
  });

  it("for a sound wanted is stopped, and its wishes stay", async () => {
    const { page } = await site.visit({ width: 390, height: 844 });
    await whenReady(page);
    await showTab(page, "Sound wanted");
    const panel = page.locator(".wanted-panel");
    await panel.getByLabel("What you want to hear").fill("glassy 4, fat bridge that cleans up, hum-free 2");
    await panel.getByRole("button", { name: "Read it" }).click();
    await panel.locator("fieldset").nth(2).waitFor();
    await panel.getByRole("button", { name: "Find guards" }).click();
    await panel.getByRole("button", { name: "Stop", exact: true }).click();
    await panel.getByText("Stopped.", { exact: true }).waitFor();
    expect(await panel.locator("fieldset").count()).toBe(3);
    await panel.getByRole("button", { name: "Find guards" }).click();
    await panel.locator(".found-guard").first().waitFor({ timeout: 60_000 });
  });
});
