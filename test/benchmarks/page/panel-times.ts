import type { Page } from "playwright-core";
import { featuresOf, settled } from "../../page/actions.ts";
import { TABS } from "../../page/tabs.ts";

export interface PanelTimes {
  /** From the tap on a tab until what it holds stands, by the tab's title; code and answers are awaited. With them, from the button to the first joint's picture. */
  readonly openMs: Readonly<Record<string, number>>;
  /** From a choice in the plan until curve and form show the guard that it makes. */
  readonly planMs: number;
}

/** Runs in the page. */
async function timeOpening(tab: Element): Promise<number> {
  const panel = document.getElementById(tab.getAttribute("aria-controls")!)!;
  const start = performance.now();
  (tab as HTMLElement).click();
  const isThere = () =>
    !panel.querySelector(".loading") &&
    !/(Working out|Reading) [^.]*…/.test(panel.textContent ?? "") &&
    panel.querySelector(panel.id === "panel-plan" ? "[data-plan]" : "*");
  while (!isThere()) await new Promise((resume) => requestAnimationFrame(resume));
  await new Promise((resume) => requestAnimationFrame(resume));
  return performance.now() - start;
}

/** Runs in the page: from the tap until the first joint's picture stands, cautions and preparations passed by. */
async function timeJointByJoint(button: Element): Promise<number> {
  const start = performance.now();
  (button as HTMLElement).click();
  const frame = () => new Promise((resume) => requestAnimationFrame(resume));
  while (!document.querySelector("dialog[open] .bench-content h2")) await frame();
  const opened = performance.now() - start;
  const next = [...document.querySelectorAll<HTMLElement>("dialog .bench-go")].at(-1)!;
  next.click();
  const before = performance.now();
  next.click();
  while (!document.querySelector("dialog .joint-picture")) await frame();
  await frame();
  const shown = performance.now() - before;
  document.querySelector<HTMLDialogElement>("dialog[open]")!.close();
  return opened + shown;
}

async function timePlan(page: Page): Promise<number> {
  await page.getByRole("tab", { name: "Plan" }).click();
  const choice = page.locator('[data-plan="trebleBleed"]');
  await choice.waitFor();
  await settled(page);
  const features = await featuresOf(page);
  return choice.evaluate(async (select, before) => {
    const plot = document.querySelector(".plot")!;
    const input = select as HTMLSelectElement;
    const to = input.value === "none" ? "cap" : "none";
    const isThere = () =>
      plot.getAttribute("aria-label") !== before &&
      document.querySelector<HTMLSelectElement>('[data-plan="trebleBleed"]')?.value === to &&
      document.querySelector(".change-line")?.textContent !== "";
    const start = performance.now();
    input.value = to;
    input.dispatchEvent(new Event("change", { bubbles: true }));
    while (!isThere()) await new Promise((resume) => requestAnimationFrame(resume));
    return performance.now() - start;
  }, features);
}

/** Opens every tab once, and changes the plan. */
export async function timePanels(page: Page): Promise<PanelTimes> {
  const openMs: Record<string, number> = {};
  for (const title of TABS) {
    openMs[title] = await page.getByRole("tab", { name: title, exact: true }).evaluate(timeOpening);
    await settled(page);
    if (title === "Solder")
      openMs["Joint by joint"] = await page
        .getByRole("button", { name: "Solder joint by joint" })
        .evaluate(timeJointByJoint);
  }
  // A bleed tells most with the volume half down.
  await page.getByRole("slider", { name: /^Volume/ }).fill("5");
  return { openMs, planMs: await timePlan(page) };
}
