import type { Locator, Page } from "playwright-core";

export async function whenReady(page: Page): Promise<void> {
  await page.locator(".plot canvas").waitFor();
  await page.locator("svg.guard").waitFor();
}

export async function openScenario(page: Page, title: RegExp): Promise<void> {
  const select = page.getByLabel("Start from");
  const option = select.locator("option", { hasText: title }).first();
  await option.waitFor({ state: "attached" });
  await select.selectOption((await option.getAttribute("value"))!);
  await whenReady(page);
}

/** Peak and cutoff of the current curve, as the page tells them. */
export async function featuresOf(page: Page): Promise<string> {
  return (await page.locator(".plot").getAttribute("aria-label"))!;
}

export async function showTab(page: Page, name: string): Promise<void> {
  await page.getByRole("tab", { name, exact: true }).click();
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
