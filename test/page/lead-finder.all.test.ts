import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { draftOf, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

/** A page that stays keeps what was measured; other leads are another pickup. */
async function openFinder(page: Page, leads: string, coils: "1" | "2", metal: "some" | "none"): Promise<Locator> {
  await whenReady(page);
  await showTab(page, "What is it?");
  const panel = page.locator("#panel-unknown");
  await panel.getByLabel("Coils", { exact: true }).selectOption(coils);
  await panel.getByLabel("Metal", { exact: true }).selectOption(metal);
  await panel.getByLabel("Leads, by names of your own").fill(leads);
  await panel
    .locator(".next-lead")
    .filter({ hasText: new RegExp(leads.split(", ").join("|")) })
    .waitFor();
  return panel;
}

/** What is on the bench: A and B are the screws' start and finish, D and C the slugs', their tops south and north. */
const READINGS: Readonly<Record<string, string>> = { "A B": "4.1k", "C D": "4.2k", "bare the metal": "0.3" };
const TAPS: Readonly<Record<string, string>> = { "screws A B": "up", "slugs C D": "up" };

/** Does what is asked for next, as the pickup would have it. @returns whether anything was asked for */
async function answerNext(panel: Locator): Promise<boolean> {
  const next = panel.locator(".next-lead");
  const asked = (await next.locator("b").first().textContent())!;
  const before = await next.textContent();
  const tap = /Tap the (\w+), \+ on (\w+), − on (\w+)/.exec(asked);
  const compass = /Compass over the (\w+)/.exec(asked);
  const ohms = /Next: (\w+) to (the metal|\w+)/.exec(asked);
  if (tap) {
    const [, row, plus, minus] = tap;
    const forth = TAPS[`${row} ${plus} ${minus}`];
    const back = TAPS[`${row} ${minus} ${plus}`];
    await next.getByRole("button", { name: forth ? "It kicked up" : back ? "It kicked down" : "No kick" }).click();
  } else if (compass)
    await next
      .getByRole("button", { name: compass[1] === "screws" ? "It draws the north end" : "It draws the south end" })
      .click();
  else if (ohms) {
    const shown = READINGS[`${ohms[1]} ${ohms[2]}`];
    if (shown === undefined) await next.getByRole("button", { name: "Open" }).click();
    else {
      await next.getByRole("textbox").fill(shown);
      await next.getByRole("textbox").press("Enter");
    }
  } else return false;
  await expect.poll(() => next.textContent()).not.toBe(before);
  return true;
}

const reading = (panel: Locator, pair: string) => panel.getByLabel(pair, { exact: true });

async function answerAll(panel: Locator): Promise<number> {
  let made = 0;
  while (await answerNext(panel)) {
    made += 1;
    expect(made).toBeLessThan(20);
  }
  return made;
}

describeWith("chromium", "the finder of leads", () => {
  const site = usePage();

  it("tells every lead by what it asks for next, a press each, without the service, and keeps it through other tabs", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openFinder(page, "A, B, C, D, bare", "2", "some");
    expect(await panel.locator(".caution").first().textContent()).toMatch(
      /Never pull or push the rods.*tape over an open coil/,
    );
    expect(await panel.getByText("How to wire it shows once more is known").isVisible()).toBe(true);
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    for (const [pair, ohms] of Object.entries({ "A – B": "4.1k", "A – C": "open", "C – D": "4.2k" }))
      await reading(panel, pair).fill(ohms);
    await reading(panel, "bare – the metal").fill("0.3");
    await panel.getByRole("heading", { name: "Certain" }).waitFor();
    expect(await answerAll(panel)).toBeGreaterThan(3);
    expect(asked.filter((url) => url.includes("/api/"))).toEqual([]);

    const cells = panel.locator("table tbody tr").filter({ hasText: /coil|metal/ });
    expect(
      await cells.evaluateAll((rows) =>
        rows.map((row) => [...row.children].slice(0, 2).map((cell) => cell.textContent)),
      ),
    ).toEqual([
      ["A", "the start of the coil of the screws"],
      ["B", "the finish of the coil of the screws"],
      ["C", "the finish of the coil of the slugs"],
      ["D", "the start of the coil of the slugs"],
      ["bare", "the metal alone (drain)"],
    ]);
    await panel.getByText("Both coils in series: solder B and C together").first().waitFor();
    expect(await panel.locator("svg.lead-picture").getAttribute("aria-label")).toMatch(
      /A is the start of the coil of the screws; B/,
    );
    const known = await reading(panel, "A – B").inputValue();
    expect(known).toBe("4.1k");
    const next = panel.locator(".next-lead");
    expect(await next.textContent()).not.toContain("doubtful");
    await reading(panel, "A – D").fill("2k");
    await panel.getByRole("heading", { name: "Doubtful" }).waitFor();
    await expect.poll(() => next.textContent()).toContain("see what is doubtful below before you solder");
    await reading(panel, "A – D").fill("");
    await showTab(page, "Measure");
    await showTab(page, "What is it?");
    expect(await reading(panel, "A – B").inputValue()).toBe("4.1k");
    expectQuiet(visit);
  });

  it("puts the pickup into the guard in place of another, hot and ground in phase, and takes it out again by undoing", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openFinder(page, "blue, pink", "1", "none");
    await reading(panel, "blue – pink").fill("6.3k");
    await panel.getByLabel("It kicked").selectOption("down");
    await panel.getByRole("button", { name: "Add this tap" }).click();
    await panel.getByLabel("The poles draw").selectOption("south");
    const before = await draftOf(page);
    await panel.getByLabel("Its place in the guard").selectOption({ index: 1 });
    await panel.getByText(/In phase with the guard's other pickups: pink hot, blue ground/).waitFor();
    await panel.getByRole("button", { name: "Put it into this guard" }).click();
    await panel.getByText("It is in the guard. Undo takes it out again.").waitFor();
    await settled(page);
    expect(JSON.stringify((await draftOf(page)).source)).toContain("6.3k");
    await page.getByRole("button", { name: "Undo" }).first().click();
    await expect.poll(async () => (await draftOf(page)).source).toEqual(before.source);
    expect(await panel.getByText("It is in the guard.").count()).toBe(0);
    expectQuiet(visit);
  });

  it("goes on to another test once a doubtful result was had again, and forgets it all for another pickup", async () => {
    const visit = await site.stay();
    const panel = await openFinder(visit.page, "S1, S2, S3", "2", "none");
    await reading(panel, "S1 – S2").fill("2k");
    await reading(panel, "S1 – S3").fill("4k");
    const next = panel.locator(".next-lead");
    const made: string[] = [];
    // Whatever is asked for, nothing is heard and nothing is drawn otherwise: a test comes twice at most.
    for (let answered = 0; answered < 14; answered++) {
      const told = (await next.locator("b").first().textContent())!;
      if (!told.startsWith("Next")) break;
      made.push(told);
      await next.evaluate((element) => element.setAttribute("data-told", ""));
      await next.getByRole("button", { name: /^(No kick|It draws the north end|Open)$/ }).click();
      await panel.locator(".next-lead:not([data-told])").waitFor();
    }
    expect(Math.max(...made.map((told) => made.filter((each) => each === told).length))).toBeLessThanOrEqual(2);
    await panel.getByRole("button", { name: "Another pickup: clear all that was measured" }).click();
    expect(await reading(panel, "S1 – S2").inputValue()).toBe("");
    expect(await panel.getByRole("button", { name: /^Take out/ }).count()).toBe(0);
    expect(await panel.getByLabel("The screws draw").inputValue()).toBe("");
    expectQuiet(visit);
  });

  it("says beside the field what cannot be read, and of a result that fits nothing else that it is doubtful", async () => {
    const visit = await site.stay();
    const panel = await openFinder(visit.page, "P, Q, R, S, bare", "2", "some");
    await reading(panel, "P – Q").fill("4,1k");
    await panel.getByText("has a decimal comma").waitFor();
    expect(await reading(panel, "P – Q").getAttribute("aria-invalid")).toBe("true");
    await reading(panel, "P – Q").fill("4.1k");
    for (const pair of ["P – R", "P – S", "Q – R", "Q – S"]) await reading(panel, pair).fill("open");
    await reading(panel, "R – S").fill("4.2k");
    await reading(panel, "P – the metal").fill("0.2");
    await reading(panel, "Q – the metal").fill("0.2");
    await panel.getByRole("heading", { name: "Doubtful" }).waitFor();
    expect(await panel.getByText(/to the metal: the likeliest labelling takes this result for misread/).count()).toBe(
      1,
    );
    await panel.getByLabel("Leads, by names of your own").fill("P");
    await panel.getByText("Expected 2 to 5 names with commas between them; there is 1.").waitFor();
    expectQuiet(visit);
  });

  for (const [width, colorScheme] of [
    [390, "light"],
    [1280, "dark"],
  ] as const)
    it(`has no serious finding of axe and keeps to the page, ${width} px wide, ${colorScheme}`, async () => {
      const visit = await site.stay({ width, colorScheme });
      const { page } = visit;
      const panel = await openFinder(page, "P, Q, R, S", "2", "some");
      await reading(panel, "P – Q").fill("4.1k");
      await panel.getByLabel("Its place in the guard").selectOption({ index: 1 });
      await panel.getByRole("button", { name: "Put it into this guard" }).waitFor();
      await bringAxe(page);
      expect(await seriousFindings(page, "#panel-unknown")).toEqual([]);
      const { scrollWidth, clientWidth } = await page.evaluate(() => {
        const { scrollWidth, clientWidth } = document.documentElement;
        return { scrollWidth, clientWidth };
      });
      expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
      expectQuiet(visit);
    });
});
