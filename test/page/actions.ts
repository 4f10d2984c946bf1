import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

/** Waits until what is shown is what was asked for. */
export async function settled(page: Page): Promise<void> {
  await page.locator("#app[aria-busy='false']").waitFor();
}

/** Waits for the first screen. */
export async function whenOpen(page: Page): Promise<void> {
  await page.locator(".plot canvas").waitFor();
  await settled(page);
}

/** Waits for the first screen and the drawing under it, which is loaded when it is scrolled to. */
export async function whenReady(page: Page): Promise<void> {
  await whenOpen(page);
  await page.locator(".guard-panel").scrollIntoViewIfNeeded();
  await page.locator("svg.guard").waitFor();
  await page.evaluate(() => scrollTo(0, 0));
  await settled(page);
}

/** Opens the choice of guards and of files, which a narrow page folds away. */
export async function openStart(page: Page): Promise<void> {
  await page.locator(".fold:has(.start)").evaluate((fold) => fold.setAttribute("open", ""));
}

export async function openScenario(page: Page, title: RegExp): Promise<void> {
  await openStart(page);
  const select = page.getByLabel("Start from");
  const option = select.locator("option", { hasText: title }).first();
  await option.waitFor({ state: "attached" });
  await select.selectOption((await option.getAttribute("value"))!);
  await whenReady(page);
}

/** Opens or closes a fold by its line, whichever it is now. */
export async function setFold(page: Page, line: string, isOpen: boolean): Promise<void> {
  const fold = page.locator("details").filter({ has: page.locator("> summary").getByText(line, { exact: true }) });
  const summary = fold.locator("> summary").first();
  await summary.waitFor();
  const follows = async () => {
    const was = await fold.first().evaluate((details: HTMLDetailsElement) => details.open);
    // A browser whose frames are late on a machine under load may lose a click.
    if (was !== isOpen) await summary.click();
    return was;
  };
  await expect.poll(follows).toBe(isOpen);
}

/** Peak and cutoff of the current curve, as the page tells them. */
export async function featuresOf(page: Page): Promise<string> {
  await settled(page);
  return (await page.locator(".plot").getAttribute("aria-label"))!;
}

/** Shows a tab with what it holds. */
export async function showTab(page: Page, name: string): Promise<void> {
  const tab = page.getByRole("tab", { name, exact: true });
  await tab.click();
  const panel = page.locator(`#${await tab.getAttribute("aria-controls")}`);
  await panel.locator(".loading").waitFor({ state: "detached" });
  // What it says is worked out once its code is there.
  if (name === "Plan") await panel.locator(".plan-form > *").first().waitFor();
}

export function positionChoice(page: Page, position: number): Locator {
  return page
    .locator(".controls fieldset")
    .first()
    .getByRole("radio", { name: String(position) });
}

export async function choosePosition(page: Page, position: number): Promise<void> {
  await positionChoice(page, position).check({ force: true });
}

interface Draft {
  readonly source: unknown;
  readonly settings: Readonly<Record<string, string | number>>;
}

/** The guard and its settings as the page keeps them, with the latest change in it. */
export async function draftOf(page: Page): Promise<Draft> {
  await settled(page);
  return page.evaluate(() => {
    dispatchEvent(new Event("pagehide"));
    return JSON.parse(localStorage.getItem("presolder.draft.1")!);
  });
}
