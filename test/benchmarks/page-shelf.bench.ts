import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { buildText } from "../../src/shelf/packed.ts";
import { whenReady } from "../page/actions.ts";
import { usePage } from "../page/browser.ts";
import { fill, guardsUpTo, openShelf } from "../page/shelf/shelf-page.ts";
import { describeWith } from "../tools.ts";
import { median, report } from "./stopwatch.ts";

const GUARDS = 500;
const VISITS = Number(process.env.PAGE_VISITS ?? 5);
/** A guard with every part and wire written out, as the page keeps them. */
const { build: FULL } = JSON.parse(readFileSync("scenarios/five-sounds-two-humbuckers.json", "utf8"));
const SHELF = guardsUpTo(GUARDS).map((guard) => ({ ...guard, file: buildText({ ...FULL, title: guard.name }) }));
/** From many guards to few, none, and back. */
const TYPED = [..."guard 49 lever", "Backspace", "Backspace", "Backspace"];

/** Runs in the page: from the press until the rows are painted. */
async function timeOpening(button: Element): Promise<number> {
  const start = performance.now();
  (button as HTMLElement).click();
  while (!document.querySelector(".shelf-row")) await new Promise((resume) => requestAnimationFrame(resume));
  await new Promise((resume) => requestAnimationFrame(resume));
  return performance.now() - start;
}

/** Runs in the page: what one letter takes, layout included. */
function timeLetter(field: Element, text: string): number {
  const input = field as HTMLInputElement;
  const start = performance.now();
  input.value = text;
  input.dispatchEvent(new Event("input", { bubbles: true }));
  // Has the rows laid out now.
  document.querySelector(".shelf")!.getBoundingClientRect();
  return performance.now() - start;
}

async function timeLetters(page: Page): Promise<number[]> {
  const field = page.getByLabel("Find a guard");
  const times: number[] = [];
  let text = "";
  for (const key of TYPED) {
    text = key === "Backspace" ? text.slice(0, -1) : text + key;
    times.push(await field.evaluate(timeLetter, text));
  }
  return times;
}

/** From the pointer's coming to the press: a short tap, a hand that hesitates takes several times as long. */
const TAP_MS = 80;

/** The page as somebody finds it who has the guards and none of the code. */
async function loadAnew(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Network.clearBrowserCache");
  await page.reload();
  await whenReady(page);
}

describeWith("chromium", "a shelf of 500 guards", () => {
  const site = usePage();

  it("opens and is searched", { timeout: VISITS * 120_000 }, async () => {
    const { page } = await site.visit({ ownWindow: true });
    await whenReady(page);
    await fill(await openShelf(page), SHELF);
    const opened: number[] = [];
    const tapped: number[] = [];
    const letters: number[] = [];
    for (let visit = 0; visit < VISITS; visit++) {
      const button = page.getByRole("button", { name: "Shelf", exact: true });
      await loadAnew(page);
      opened.push(await button.evaluate(timeOpening));
      await loadAnew(page);
      await button.dispatchEvent("pointerenter");
      await page.waitForTimeout(TAP_MS);
      tapped.push(await button.evaluate(timeOpening));
      letters.push(...(await timeLetters(page)));
    }
    expect([...opened, ...tapped].every(Number.isFinite)).toBe(true);
    report(`a shelf of ${GUARDS} guards, medians of ${VISITS} visits, ms`, {
      "opened at once, all of its code from the service (aim 100)": median(opened),
      [`opened, ${TAP_MS} ms after the pointer came (aim 100)`]: median(tapped),
      "a letter of a search (aim 50)": median(letters),
      "the slowest letter": Math.max(...letters),
    });
  });
});
