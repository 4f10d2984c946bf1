import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "as found, as wanted", () => {
  const site = usePage();

  it("lists the joints from the guard kept as found to the guard on the bench, and home, and keeps a tick", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /22 nF or 47/);
    await showTab(page, "Rewire");
    const panel = page.locator("#panel-rewire");
    expect(await panel.locator(".caution").textContent()).toMatch(/Never open an amplifier/);
    const steps = panel.locator(".ticks").first().locator("li");
    await expect.poll(() => steps.count()).toBeGreaterThan(0);
    const [, opened, made] = /(\d+) joints? to open, (\d+) to make/.exec((await panel.textContent())!)!;
    expect(await steps.count()).toBe(Number(opened) + Number(made));
    // Both caps of the guard kept as B go out, and those of the guard on the bench come in.
    expect(await panel.getByText(/^cap\d: cap 47 nF/).count()).toBe(2);
    expect(await panel.getByText(/^cap\d: cap 22 nF/).count()).toBe(2);
    await steps.first().getByRole("checkbox").check();

    const home = panel.getByRole("heading", { name: "The way home" });
    expect(await home.isVisible()).toBe(false);
    await panel.getByRole("button", { name: "Show the way home" }).click();
    expect(await home.isVisible()).toBe(true);
    expect(await panel.locator(".ticks").last().locator("li").count()).toBe(await steps.count());

    await page.reload();
    await whenReady(page);
    await showTab(page, "Rewire");
    await expect.poll(() => steps.first().getByRole("checkbox").isChecked()).toBe(true);
    await panel.getByRole("button", { name: "Keep this guard as found" }).click();
    await panel.getByText("Nothing is to be soldered").waitFor();
    expect(await steps.count()).toBe(0);
    expectQuiet(visit);
  });
});
