import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "links", () => {
  const site = usePage();

  thoroughly("carry the build kept as B and what was being looked at", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    await openScenario(page, /HSS/);
    await page.locator("label.choice", { hasText: "guard B" }).click();
    await page.locator("label.choice", { hasText: /^true$/ }).click();
    await page.getByLabel("Hand", { exact: true }).selectOption("bright");
    await page.getByLabel("Strings", { exact: true }).selectOption("old");
    await showTab(page, "Send it");
    await page.getByRole("button", { name: "Copy a link to this guard" }).click();
    await expect.poll(() => page.getByLabel("The link").inputValue()).toContain("/b/");
    const url = new URL(await page.getByLabel("The link").inputValue());
    const features = await featuresOf(page);
    const friend = await site.visit({ path: url.pathname });
    await whenReady(friend.page);
    expect(await featuresOf(friend.page)).toBe(features);
    expect(await friend.page.getByRole("radio", { name: "guard B" }).isChecked()).toBe(true);
    expect(await friend.page.getByRole("radio", { name: "true" }).isChecked()).toBe(true);
    await expect.poll(() => friend.page.getByLabel("Hand", { exact: true }).inputValue()).toBe("bright");
    await expect.poll(() => friend.page.getByLabel("Strings", { exact: true }).inputValue()).toBe("old");
    await showTab(friend.page, "A against B");
    await expect.poll(() => friend.page.locator("#panel-builds").textContent()).toContain("HSS guard, 500 kΩ pots");
    expect(await friend.page.title()).toContain("HSS guard");
    expectQuiet(friend);
  });

  thoroughly(
    "leave one's own draft alone until the guard is changed, and then survive a reload as one's own",
    async () => {
      const { page } = await site.stay();
      await whenReady(page);
      await openScenario(page, /HSS/);
      const link = await page.evaluate(async (build) => {
        const headers = { "content-type": "application/json" };
        const reply = await fetch("/api/link", { method: "POST", headers, body: JSON.stringify({ build }) });
        return (await reply.json()).url as string;
      }, onePickup());
      const features = await featuresOf(page);
      await page.goto(`${site.origin}${new URL(link).pathname}`);
      await whenReady(page);
      await page.goto(site.origin);
      await whenReady(page);
      expect(await featuresOf(page)).toBe(features);

      await page.goto(`${site.origin}${new URL(link).pathname}`);
      await whenReady(page);
      const cap = page.locator('[data-path="parts.cap.capacitance"]');
      await showTab(page, "Parts");
      await cap.fill("68n");
      await cap.press("Enter");
      await expect.poll(() => new URL(page.url()).pathname).toBe("/");
      await page.reload();
      await whenReady(page);
      await showTab(page, "Parts");
      expect(await cap.inputValue()).toBe("68n");
    },
  );

  thoroughly("name a phrase that there is none of, and the first is played", async () => {
    const { page: sender } = await site.stay();
    const view = { signal: "yodel", hand: "fist" };
    const made = await sender.request.post(`${site.origin}/api/link`, { data: { build: onePickup(), view } });
    const { code } = (await made.json()) as { code: string };
    const { page } = await site.visit({ path: `/b/${code}` });
    await whenReady(page);
    await expect.poll(() => page.getByLabel("Phrase", { exact: true }).inputValue()).toBe("strum");
    expect(await page.getByLabel("Hand", { exact: true }).inputValue()).toBe("usual");
  });

  thoroughly("that the service cannot answer at once say so, and open as soon as it can", async () => {
    const { page: sender } = await site.stay();
    const made = await sender.request.post(`${site.origin}/api/link`, { data: { build: onePickup() } });
    const { code } = (await made.json()) as { code: string };
    const { page } = await site.visit({
      path: `/b/${code}`,
      before: async (blank) => {
        await blank.route("**/api/link/*", (route) => route.abort());
      },
    });
    await page.locator("#service-wait").getByText("cannot be reached now").waitFor();
    await page.unroute("**/api/link/*");
    await whenReady(page);
    expect(await page.locator("#service-wait").isVisible()).toBe(false);
  });

  it("that are damaged open a friendly page with a way on", async () => {
    const visit = await site.visit({ path: "/b/1AAAA" });
    const { page } = visit;
    expect(await page.locator("body").textContent()).toMatch(/damaged|cannot/i);
    expect(await page.getByRole("link").count()).toBeGreaterThan(0);
    expect(visit.strangers).toEqual([]);
  });
});
