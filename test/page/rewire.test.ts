import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

/** Two guards that differ in both tone caps: eight joints. */
async function openRewiring(page: Page): Promise<Locator> {
  await whenReady(page);
  await openScenario(page, /22 nF or 47/);
  await showTab(page, "Rewire");
  const panel = page.locator("#panel-rewire");
  await panel.locator("svg.rewiring").first().waitFor();
  await panel.getByRole("radio", { name: "both" }).first().check({ force: true });
  return panel;
}

const stepNumbers = (joints: Locator) =>
  joints.evaluateAll((all) => all.map((each) => each.querySelector(".joint-number")!.textContent));

describeWith("chromium", "as found, as wanted", () => {
  const site = usePage();

  it("lists the joints from the guard kept as found to the guard on the bench, and home, and keeps a tick", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openRewiring(page);
    expect(await panel.locator(".caution").textContent()).toMatch(/Never open an amplifier/);
    const steps = panel.locator(".steps").first().locator("li");
    await expect.poll(() => steps.count()).toBeGreaterThan(0);
    const [, opened, made] = /(\d+) joints? to open, (\d+) to make/.exec((await panel.textContent())!)!;
    expect(await steps.count()).toBe(Number(opened) + Number(made));
    // Both caps of the guard kept as B go out, and those of the guard on the bench come in.
    expect(await panel.getByText(/^Tone cap \d: cap 47 nF/).count()).toBe(2);
    expect(await panel.getByText(/^Tone cap \d: cap 22 nF/).count()).toBe(2);
    expect(await steps.first().textContent()).toMatch(
      /^ 1\. Open the joint at the upper tone, lug 2 \(wiper\): .*tone1\.2$/,
    );
    await steps.first().getByRole("checkbox").check();

    const home = panel.getByRole("heading", { name: "The way home" });
    expect(await home.isVisible()).toBe(false);
    await panel.getByRole("button", { name: "Show the way home" }).click();
    expect(await home.isVisible()).toBe(true);
    expect(await panel.locator(".steps").last().locator("li").count()).toBe(await steps.count());

    await page.reload();
    await whenReady(page);
    await showTab(page, "Rewire");
    await expect.poll(() => steps.first().getByRole("checkbox").isChecked()).toBe(true);
    expect(await panel.locator(".joint.done .joint-number").allTextContents()).toEqual(["1"]);
    await panel.getByRole("button", { name: "Keep this guard as found" }).click();
    await panel.getByText("Nothing is to be soldered").waitFor();
    expect(await steps.count()).toBe(0);
    expectQuiet(visit);
  });

  thoroughly(
    "draws every joint with its step's number, open rings as found and filled ones as wanted, exchanged on the way home",
    async () => {
      const visit = await site.stay();
      const panel = await openRewiring(visit.page);
      const seen = (what: string, at: Locator) => stepNumbers(at.locator(`.joint:visible:has(.joint-${what})`));
      const there = panel.locator("svg.rewiring").first();
      const [opens, makes] = [await seen("open", there), await seen("make", there)];
      expect([opens.length, makes.length]).toEqual([4, 4]);
      expect([...opens, ...makes].sort()).toEqual(["1", "2", "3", "4", "5", "6", "7", "8"]);
      expect(await there.locator(".goes-out:visible").count()).toBe(2);
      expect(await there.locator(".change-word:visible").allTextContents()).toEqual([
        ...Array(2).fill("comes in"),
        ...Array(2).fill("goes out"),
      ]);

      await panel.getByRole("button", { name: "Show the way home" }).click();
      const home = panel.locator("svg.rewiring").last();
      const back = (numbers: (string | null)[]) => numbers.map((each) => String(9 - Number(each))).reverse();
      expect(await seen("make", home)).toEqual(back(opens));
      expect(await seen("open", home)).toEqual(back(makes));

      await panel.getByRole("radio", { name: "as found" }).first().check({ force: true });
      expect(await seen("open", there)).toEqual(opens);
      expect(await seen("make", there)).toEqual([]);
      expect(await there.locator(".change-word:visible").allTextContents()).toEqual(["goes out", "goes out"]);
      // The switch of the other drawing follows.
      expect(await panel.getByRole("radio", { name: "as found" }).last().isChecked()).toBe(true);
      expect(await seen("open", home)).toEqual([]);
      await panel.getByRole("radio", { name: "as wanted" }).first().check({ force: true });
      expect(await seen("make", there)).toEqual(makes);
      expect(await there.locator(".wire-opens:visible").count()).toBe(0);
      expectQuiet(visit);
    },
  );

  thoroughly("lights a step's joint and a joint's step, by pointer and by keys, whichever guard is shown", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openRewiring(page);
    const steps = panel.locator(".steps li");
    const lit = () => stepNumbers(panel.locator(".joint.lit"));
    await steps.nth(2).hover();
    expect(await lit()).toEqual(["3"]);
    expect(await panel.locator(".wire.lit").count()).toBe(1);
    await page.mouse.move(0, 0);
    expect(await lit()).toEqual([]);
    await steps.nth(4).getByRole("checkbox").focus();
    expect(await lit()).toEqual(["5"]);
    await page.keyboard.press("Space");
    expect(await panel.locator(".joint.done .joint-number").allTextContents()).toContain("5");
    await page.keyboard.press("Space");
    expect(await panel.locator(".joint.done .joint-number").allTextContents()).not.toContain("5");

    await panel.locator(".joint").nth(6).click();
    expect(
      await steps
        .nth(6)
        .getByRole("checkbox")
        .evaluate((box) => box === document.activeElement),
    ).toBe(true);
    expect(await steps.nth(6).getAttribute("class")).toContain("lit");

    await panel.locator('.joint[tabindex="0"]').focus();
    const focused = () => page.evaluate(() => document.activeElement?.querySelector(".joint-number")?.textContent);
    await panel.locator(".joint").first().focus();
    await page.keyboard.press("ArrowRight");
    expect(await focused()).toBe("2");
    expect(await panel.locator('.joint[tabindex="0"]').count()).toBe(1);
    await panel.getByRole("radio", { name: "as found" }).check({ force: true });
    await panel.locator(".joint").first().focus();
    await page.keyboard.press("ArrowDown");
    // Step 2 is a joint to make, which the guard as found has not.
    expect(await focused()).toBe("3");
    await page.keyboard.press("Enter");
    expect(
      await steps
        .nth(2)
        .getByRole("checkbox")
        .evaluate((box) => box === document.activeElement),
    ).toBe(true);
    await steps.nth(1).getByRole("checkbox").focus();
    expect(await panel.locator(".joint.lit").isVisible()).toBe(true);
    expectQuiet(visit);
  });

  for (const [width, colorScheme] of [
    [390, "light"],
    [1440, "dark"],
  ] as const)
    thoroughly(
      `has no serious finding of axe, there or home, and keeps to the page, ${width} px wide, ${colorScheme}`,
      async () => {
        const visit = await site.stay({ width, colorScheme });
        const { page } = visit;
        const panel = await openRewiring(page);
        await panel.getByRole("button", { name: "Show the way home" }).click();
        await panel.locator(".steps").last().getByRole("checkbox").first().focus();
        await bringAxe(page);
        expect(await seriousFindings(page, "#panel-rewire")).toEqual([]);
        const { scrollWidth, clientWidth } = await page.evaluate(() => {
          const { scrollWidth, clientWidth } = document.documentElement;
          return { scrollWidth, clientWidth };
        });
        expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
        expectQuiet(visit);
      },
    );

  thoroughly("scrolls to a joint within the drawing's frame alone, which stays in sight on a narrow page", async () => {
    const visit = await site.stay({ width: 390, height: 844 });
    const { page } = visit;
    const panel = await openRewiring(page);
    const frame = panel.locator(".rewire-frame").first();
    const isInFrame = (step: number) =>
      frame.evaluate((element, index) => {
        const [room, sign] = [element, element.querySelectorAll(".joint")[index]!].map((each) =>
          each.getBoundingClientRect(),
        );
        return sign!.left >= room!.left && sign!.right <= room!.right;
      }, step);
    await frame.evaluate((element) => element.scrollTo(element.scrollWidth, 0));
    expect(await isInFrame(4)).toBe(false);
    await panel.locator(".steps").first().getByRole("checkbox").nth(4).focus();
    expect(await isInFrame(4)).toBe(true);
    expect(await page.evaluate(() => scrollX)).toBe(0);
    await panel
      .locator(".joint")
      .nth(7)
      .evaluate((joint) => joint.dispatchEvent(new MouseEvent("click")));
    const [drawn, step] = await Promise.all([frame.boundingBox(), panel.locator(".steps li").nth(7).boundingBox()]);
    expect(drawn!.y).toBeGreaterThanOrEqual(-1);
    expect(step!.y).toBeGreaterThanOrEqual(drawn!.y + drawn!.height);
    expect(step!.y + step!.height).toBeLessThanOrEqual(844);
    expectQuiet(visit);
  });

  thoroughly("prints the drawing whole beside its list, without what is to be pressed", async () => {
    const { page } = await site.stay();
    const panel = await openRewiring(page);
    await page.emulateMedia({ media: "print" });
    const drawing = panel.locator("svg.rewiring").first();
    const cut = await drawing.evaluate((svg) => {
      const frame = svg.parentElement!;
      return Math.max(frame.scrollWidth - frame.clientWidth, frame.scrollHeight - frame.clientHeight);
    });
    expect(cut).toBeLessThanOrEqual(1);
    expect(await panel.locator(".legend").isVisible()).toBe(true);
    expect(await panel.locator(".steps li:visible").count()).toBe(8);
    expect(await panel.locator(":is(button, fieldset):visible").count()).toBe(0);
    await page.emulateMedia({ media: null });
  });
});
