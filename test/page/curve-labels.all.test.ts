import { describe, expect, it } from "vitest";
import { isTaken } from "../../src/page/curves/trace-labels.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describe("the name of a curve", () => {
  it("is not written where it would lie under a mark", () => {
    const mark = { left: 100, top: 50, width: 60, height: 18 };
    expect(isTaken(130, 59, 8, [mark])).toBe(true);
    expect(isTaken(165, 59, 8, [mark])).toBe(true);
    expect(isTaken(170, 59, 8, [mark])).toBe(false);
    expect(isTaken(130, 80, 8, [mark])).toBe(false);
    expect(isTaken(130, 59, 8, [])).toBe(false);
  });
});

describeWith("chromium", "two builds on the plot", () => {
  const site = usePage();

  it("each have their name, their peak and their cutoff under it", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const other = page.locator(".readout-other");
    expect(await other.count()).toBe(0);
    await page.getByRole("radio", { name: "guard B" }).check({ force: true });
    await expect.poll(() => other.textContent()).toMatch(/B, .+: Peak at .+3 dB down at/);
    const own = await page.locator(".readout-text").first().textContent();
    expect(await featuresOf(page)).toContain(own!.replace("This guard: ", ""));
    expect((await other.textContent())!.split(": ")[1]).not.toBe(own!.split(": ")[1]);
    expectQuiet(visit);
  });
});
