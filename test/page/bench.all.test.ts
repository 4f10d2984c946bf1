import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "the bench on the page", () => {
  const site = usePage();

  async function openTab(tab: string, scenario = /HSS/) {
    const visit = await site.stay();
    await whenReady(visit.page);
    await openScenario(visit.page, scenario);
    await visit.page.locator(".finding, .all-well").first().waitFor();
    await showTab(visit.page, tab);
    return visit;
  }

  it("shows the cautions before any soldering, and keeps a tick through a reload", async () => {
    const visit = await openTab("Solder");
    const { page } = visit;
    const panel = page.locator("#panel-solder");
    expect(await panel.locator(".caution").first().textContent()).toMatch(/Never open an amplifier/);
    const first = panel.getByLabel(/^Joint 1\./);
    await first.check();
    await page.reload();
    await whenReady(page);
    await showTab(page, "Solder");
    await expect.poll(() => panel.getByLabel(/^Joint 1\./).isChecked()).toBe(true);
    expect(await panel.getByLabel(/^Joint 2\./).isChecked()).toBe(false);
    await showTab(page, "Wires");
    expect(await page.locator("#panel-wires .caution").textContent()).toMatch(/iron/);
    expectQuiet(visit);
  });

  thoroughly("prints the cautions before the drawing, and no field that is for the screen alone", async () => {
    const { page } = await openTab("Solder");
    await page.locator("#panel-solder table").first().waitFor();
    await page.emulateMedia({ media: "print" });
    const caution = page.locator(".print-only", { hasText: "Never open an amplifier" });
    expect(await caution.isVisible()).toBe(true);
    const [above, drawing] = [await caution.boundingBox(), await page.locator("svg.guard").boundingBox()];
    expect(above!.y + above!.height).toBeLessThanOrEqual(drawing!.y);
    expect(await page.locator("#panel-solder .caution").isVisible()).toBe(false);
    expect(
      await page
        .getByLabel(/^In the drawer/)
        .first()
        .isVisible(),
    ).toBe(false);
  });

  thoroughly(
    "refuses a temperature and a slack that cannot be beside their fields, and keeps the table that stands",
    async () => {
      const { page } = await openTab("Measure");
      await page.locator("#panel-measure tbody tr").first().waitFor();
      const temperature = page.getByLabel("Room and coils, °C");
      await temperature.fill("400");
      expect(await temperature.getAttribute("aria-invalid")).toBe("true");
      expect(await temperature.locator("xpath=../p").textContent()).toContain("from -40 to 100 °C");
      await temperature.fill("25");
      expect(await temperature.getAttribute("aria-invalid")).toBeNull();
      await showTab(page, "Solder");
      await page.getByText("My wire, lengths and iron").click();
      const slack = page.getByLabel("Slack on the guard, mm");
      await slack.fill("-5");
      expect(await slack.locator("xpath=../p").textContent()).toContain("from 0 to 500 mm");
      const cuts = page.locator("#panel-solder table", { has: page.getByText("Wires to cut") });
      await slack.fill("0");
      const before = await cuts.textContent();
      await slack.fill("100");
      await expect.poll(() => cuts.textContent()).not.toBe(before);
    },
  );

  thoroughly("takes what is in the drawer off what is to be bought", async () => {
    const { page } = await openTab("Solder");
    const field = page.getByLabel(/^In the drawer: cap 22 nF/);
    await field.fill("1");
    await field.press("Tab");
    const row = page.locator("#panel-solder tr", { hasText: "cap 22 nF" });
    await expect.poll(() => row.locator("td").last().textContent()).toBe("1");
  });

  thoroughly(
    "keeps in the drawer what the build has no use for, says that it stays over, and takes it out again",
    async () => {
      const visit = await openTab("Solder");
      const { page } = visit;
      const form = page.getByRole("form", { name: "Also in the drawer" });
      const [value, add] = [form.getByLabel("Value"), form.getByRole("button", { name: "Add" })];
      await value.fill("much");
      await add.click();
      expect(await value.getAttribute("aria-invalid")).toBe("true");
      await value.fill("47n");
      await form.getByLabel("How many").fill("2");
      await add.focus();
      await page.keyboard.press("Enter");
      const over = page.getByRole("region", { name: "Stays over" }).getByRole("listitem");
      await expect.poll(() => over.allTextContents()).toEqual([expect.stringMatching(/^2 × cap 47 nF.*473K/)]);
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Add");
      const field = page.getByLabel(/^In the drawer: cap 22 nF/);
      await field.fill("5");
      await field.press("Tab");
      await expect.poll(() => over.count()).toBe(2);
      expect(await field.inputValue()).toBe("5");
      expect(await over.nth(0).textContent()).toMatch(/^3 × cap 22 nF/);
      await bringAxe(page);
      expect(await seriousFindings(page, "#panel-solder")).toEqual([]);
      await page.getByRole("button", { name: /^Take out cap 47 nF/ }).click();
      await expect.poll(() => over.allTextContents()).toEqual([expect.stringMatching(/^3 × cap 22 nF/)]);
      await field.fill("2");
      await field.press("Tab");
      await expect.poll(() => over.count()).toBe(0);
      expectQuiet(visit);
    },
  );

  thoroughly(
    "lists what is mounted before the sheet and how the guard is closed after it, and keeps what is noted",
    async () => {
      const visit = await openTab("Solder");
      const { page } = visit;
      const panel = page.locator("#panel-solder");
      const headings = await panel.locator("h3").allTextContents();
      expect(headings).toEqual([
        "Mounting, before the first wire",
        "Build sheet",
        "The harness, without the pickups",
        "The pickups",
        "Closing the guard",
        "Parts list",
        "Hardware",
      ]);
      await panel.getByLabel(/^Height screws by hand first/).check();
      const noted = panel.getByLabel(/^Noted: jack, lever 1/);
      await noted.fill("7.9k");
      await panel.getByLabel("Measured on").fill("3 May");
      await page.reload();
      await whenReady(page);
      await showTab(page, "Solder");
      await expect.poll(() => noted.inputValue()).toBe("7.9k");
      expect(await panel.getByLabel("Measured on").inputValue()).toBe("3 May");
      expect(await panel.getByLabel(/^Height screws by hand first/).isChecked()).toBe(true);
      await page.emulateMedia({ media: "print" });
      expect(await panel.getByText("Springs or sleeves.").isVisible()).toBe(true);
      const hardware = panel.getByRole("region", { name: "Hardware" });
      expect(await hardware.isVisible()).toBe(true);
      expect(await hardware.textContent()).toContain("common practice, no source");
      expectQuiet(visit);
    },
  );

  it("says whether a measured value fits, and finds the fault that explains it", async () => {
    const visit = await openTab("Measure");
    const { page } = visit;
    const reading = (position: number) => page.getByLabel(new RegExp(`^Measured: jack, lever ${position}`)).first();
    const nominal = async (position: number) =>
      (await reading(position).locator("xpath=ancestor::tr/td[2]").textContent())!;
    expect(await reading(5).getAttribute("placeholder")).toBeNull();
    await reading(5).fill(await nominal(5));
    await expect.poll(() => reading(5).locator("xpath=../span").textContent()).toBe("fits");
    // With the neck's hot lead off, only the volume's track is left.
    await reading(5).fill("250k");
    await expect.poll(() => reading(5).locator("xpath=../span").textContent()).toBe("does not fit");
    for (const position of [1, 3]) await reading(position).fill(await nominal(position));
    await page.getByRole("button", { name: "What explains this?" }).click();
    const diagnosis = page.locator("#panel-measure .diagnosis");
    await diagnosis.waitFor();
    // Over the 20 kΩ range is no open circuit: the same reading, told with less.
    const over = page.waitForRequest("**/api/diagnose");
    await page.getByLabel(/^Meter range/).selectOption("20000");
    await reading(5).fill("OL");
    await page.getByRole("button", { name: "What explains this?" }).click();
    expect((await over).postDataJSON().readings).toContainEqual(expect.objectContaining({ above: 20_000 }));
    await diagnosis.waitFor();
    expect(await diagnosis.textContent()).toMatch(/^Most likely \(\d+ %\) .*neck.*jack, lever 5.* shows /);
    expect(await diagnosis.textContent()).not.toMatch(/readings\.\d/);
    const next = page.locator("#panel-measure .next-check");
    expect(await next.textContent()).toMatch(
      /^Next, measure from .*neck.* to .*, nothing plugged in, with lever in position \d/,
    );
    expect(await next.textContent()).toMatch(/Ω → |open → /);
    // Where the two probes go is drawn, and told to who does not see it.
    const picture = next.getByRole("img", { name: /^Probe A on .*, probe B on .*, seen from the back$/ });
    await picture.waitFor();
    expect(await picture.locator(".probe").count()).toBe(2);
    const first = page.locator(".explanations li").first();
    expect(await first.isVisible()).toBe(false);
    await page.getByText("What else it may be, and how likely").click();
    expect(await first.textContent()).toMatch(/likely, fits the readings to/);
    await bringAxe(page);
    expect(await seriousFindings(page, "#panel-measure")).toEqual([]);
    expectQuiet(visit);
  });

  thoroughly("refuses a mistyped lug beside its field, reads a right one, and takes a reading out again", async () => {
    const { page } = await openTab("Measure");
    const [from, to] = [page.getByLabel("First probe on"), page.getByLabel("Second probe on")];
    const add = page.getByRole("button", { name: "Add this reading" });
    await from.fill("jack.tipp");
    await to.fill("jack.sleeve");
    await add.click();
    expect(await from.getAttribute("aria-invalid")).toBe("true");
    expect(await from.locator("xpath=../p").textContent()).toMatch(/jack\.tip\b/);
    await from.fill("neck.hot");
    await add.click();
    const row = page.locator("#panel-measure tr", { hasText: "neck.hot to jack, sleeve jack.sleeve" });
    await row.first().waitFor();
    // The next guard has no such pickup: it is left out there, and everything else is read.
    await openScenario(page, /half as loud/);
    await page.locator(".finding, .all-well").first().waitFor();
    await page.locator("#panel-measure tbody tr").first().waitFor();
    await page.getByRole("button", { name: /Take out neck.hot to/ }).click();
    await expect.poll(() => page.locator("#panel-measure .told", { hasText: "neck.hot" }).count()).toBe(0);
  });

  thoroughly("says plainly what the bench refuses, and goes on with the next question", async () => {
    const { page } = await openTab("Measure");
    await page.locator("#panel-measure tbody tr").first().waitFor();
    const refusal = "a made-up refusal";
    await page.route("**/bench-worker.js", (route) =>
      route.fulfill({ contentType: "text/javascript", body: `throw new Error("${refusal}")` }),
    );
    await page.reload();
    await whenReady(page);
    await showTab(page, "Measure");
    await page.locator("#panel-measure .fault-text", { hasText: refusal }).waitFor();
    expect(await page.locator("#panel-measure").textContent()).not.toContain("Working out");
    await page.unroute("**/bench-worker.js");
    await openScenario(page, /came back/i);
    await page.locator("#panel-measure tbody tr").first().waitFor();
    expect(await page.locator("#panel-measure").textContent()).not.toContain(refusal);
  });

  thoroughly("takes what was noticed without a meter", async () => {
    const { page } = await openTab("Measure");
    await page.getByLabel("What you noticed").selectOption("no-sound");
    await page.getByLabel("Where", { exact: true }).selectOption("3");
    await page.getByRole("button", { name: "Add what you noticed" }).click();
    expect(await page.locator(".told li").textContent()).toContain("position 3");
    await page.getByRole("button", { name: "What explains this?" }).click();
    await page.locator("#panel-measure .diagnosis").waitFor();
    expect(await page.locator(".explanations > li").first().textContent()).toMatch(/middle|lever/i);
  });

  thoroughly("says what to do where a wish cannot be met, and shows no empty table", async () => {
    const { page } = await openTab("Which part?");
    await page.route("**/api/search", async (route) => {
      const answer = await (await route.fetch()).json();
      await route.fulfill({ json: { ...answer, now: null, best: [] } });
    });
    const panel = page.locator("#panel-choice");
    await panel.getByRole("checkbox").first().check();
    await panel.getByRole("button", { name: "Find the values" }).click();
    await panel.locator(".verdict", { hasText: "Turn the tone and the volume up" }).waitFor();
    expect(await panel.getByText(/The best of/).count()).toBe(0);
  });

  it("marks in the drawing what the audit finds, by number", async () => {
    const { page } = await openTab("Parts", /came back/i);
    const found = await page.locator(".finding").count();
    expect(found).toBeGreaterThan(0);
    const numbers = await page.locator("svg.guard .mark text").allTextContents();
    expect(new Set(numbers)).toEqual(new Set(Array.from({ length: found }, (_, index) => String(index + 1))));
  });
});
