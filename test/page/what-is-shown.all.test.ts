import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

/** Runs in the browser: all texts drawn on canvases since it was first called, for want of any other way to read them. */
function drawnTexts(): string[] {
  const scope = globalThis as { drawn?: string[] };
  if (!scope.drawn) {
    scope.drawn = [];
    const draw = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (this: CanvasRenderingContext2D, text, ...rest) {
      scope.drawn!.push(text);
      draw.call(this, text, ...rest);
    };
  }
  return scope.drawn;
}

async function levelAxis(page: Page): Promise<string | undefined> {
  return (await page.evaluate(drawnTexts)).findLast((text) => text.startsWith("level"));
}

describeWith("chromium", "what the page shows", () => {
  const site = usePage();

  it("is an axis named for the levels drawn on it, each time they change", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await levelAxis(page);
    for (const [choice, words] of [
      ["true", "level, dB"],
      ["over 200 Hz", "level over 200 Hz, dB"],
    ]) {
      await page.locator("label.choice", { hasText: new RegExp(`^${choice}$`) }).click();
      await expect.poll(() => levelAxis(page)).toBe(words);
    }
    expectQuiet(visit);
  });

  it("is what was measured on this guard, and not on the one before", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    await openScenario(page, /long lead/);
    await showTab(page, "Measure");
    const reading = page.getByLabel(/^Measured: jack, lever 5/).first();
    await reading.fill("5.79k");
    await openScenario(page, /22 nF or 47/);
    await page.locator(".finding, .all-well").first().waitFor();
    await reading.waitFor();
    expect(await reading.inputValue()).toBe("");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => reading.inputValue()).toBe("5.79k");
    // A change of the guard leaves what was measured on it.
    await page.getByLabel("Room and coils, °C").fill("25");
    await expect.poll(() => reading.inputValue()).toBe("5.79k");
  });

  thoroughly("is why a link could not be opened, beside the guard that took its place", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    const path = await page.evaluate(async (build) => {
      const headers = { "content-type": "application/json" };
      const reply = await fetch("/api/link", { method: "POST", headers, body: JSON.stringify({ build }) });
      return new URL((await reply.json()).url as string).pathname;
    }, onePickup());
    await page.route("**/api/link/*", (route) =>
      route.fulfill({ status: 400, contentType: "application/problem+json", body: '{"detail":"the code is damaged"}' }),
    );
    await page.goto(`${site.origin}${path}`);
    await whenReady(page);
    await expect.poll(() => page.locator(".notice").textContent()).toContain("the code is damaged");
  });
});
