import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { openScenario, setFold, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { usePage } from "./browser.ts";
import { cutChoices } from "./cut-choices.ts";
import { contentOf } from "./download.ts";
import { EXAMINED } from "./examined-answer.ts";

const FOLD = "Examine the finished guard with an audio interface";
const NOTE = "The plan ends here.";
const SILENT = new Float32Array(44_100);
const SILENCE = {
  name: "silence.wav",
  mimeType: "audio/wav",
  buffer: Buffer.from(encodeWav({ sampleRateHz: 44_100, channels: [SILENT, SILENT] }, "pcm24")),
};

const panelOf = (page: Page) => page.getByRole("region", { name: "Examining the finished guard" });
const placeOf = (panel: Locator, title: string) =>
  panel.locator(".recording-slot").filter({ has: panel.page().getByLabel(title, { exact: true }) });

async function openJack(page: Page): Promise<Locator> {
  await whenReady(page);
  await openScenario(page, /fed before or after the volume/i);
  await showTab(page, "Measure");
  await setFold(page, FOLD, true);
  const panel = panelOf(page);
  await panel.getByLabel("Examine it").selectOption("jack");
  return panel;
}

const isOpen = (place: Locator) => place.evaluate((fold: HTMLDetailsElement) => fold.open);

describeWith("chromium", "examining the finished guard through its jack", () => {
  const site = usePage();

  it("keeps the take to make open and the others a line each, and opens one whose recording is refused", async () => {
    const { page } = await site.stay({ width: 390 });
    const panel = await openJack(page);
    const [first, second] = ["toggle in position 1", "toggle in position 2"].map((title) => placeOf(panel, title));
    expect([await isOpen(first!), await isOpen(second!)]).toEqual([true, false]);
    await panel.getByText(/^None of 11 takes yet/).waitFor();
    await panel.getByLabel("toggle in position 1", { exact: true }).setInputFiles(SILENCE);
    await panel.getByText(/^1 of 11 takes is there/).waitFor();
    expect([await isOpen(first!), await isOpen(second!)]).toEqual([false, true]);
    await first!.getByText("✓").waitFor();
    expect(await isOpen(panel.locator(".step"))).toBe(false);
    await panel.getByRole("button", { name: "Hold it to the drawing" }).click();
    await first!.getByText(/nothing but zeros in channel 1/).waitFor();
    await panel.getByText("1. Set it up").click();
    await panel.getByLabel("The known resistor", { exact: true }).fill("47 apples");
    await panel.getByText("1. Set it up").click();
    await panel.getByRole("button", { name: "Hold it to the drawing" }).click();
    await panel.locator(".step .fault-text:visible").waitFor();
    await panel.getByLabel("The known resistor", { exact: true }).fill("47k");
  });

  it("shows what came out: each take's curve, the next take's own place, and where the meter contradicts", async () => {
    const { page } = await site.stay({ width: 390 });
    const panel = panelOf(page);
    await page.route("**/api/examine", (route) => route.fulfill({ json: EXAMINED }));
    await panel.getByRole("button", { name: "Hold it to the drawing" }).click();
    const answer = panel.locator(".examined");
    await answer.getByText("Meter and takes contradict each other").waitFor();
    await answer.getByRole("row", { name: /7\.8 kΩ.*3\.9 kΩ.*contradicts toggle in position 1/ }).waitFor();
    // Nobody scrolled to it.
    await answer.locator(".probe-picture svg").waitFor({ state: "attached" });
    expect(await answer.getByText("Loading…").filter({ visible: true }).count()).toBe(0);
    expect(
      await answer
        .getByText(/^The takes are those of a larger cap at/)
        .locator("small")
        .textContent(),
    ).toBe("tone1.2");
    await answer.getByText("does not agree with the drawing").click();
    const figure = answer.locator(".take-figure").filter({ visible: true });
    await figure.locator("canvas").waitFor();
    await figure.getByText("the likeliest departure").waitFor();
    await figure.getByRole("img", { name: /Farthest from the drawing: −6\.0 dB at / }).waitFor();
    await bringAxe(page);
    expect(await seriousFindings(page, ".sound-card")).toEqual([]);
    const { scroll, client } = await page.evaluate(() => {
      const { scrollWidth: scroll, clientWidth: client } = document.documentElement;
      return { scroll, client };
    });
    expect(scroll).toBeLessThanOrEqual(client);
    await answer.getByRole("button", { name: "Make that take" }).click();
    const next = placeOf(panel, EXAMINED.nextTake!.title);
    expect(await isOpen(next)).toBe(true);
    expect(await next.getByText(/it tells the two apart/).isVisible()).toBe(true);
    expect(
      await next.getByRole("button", { name: /^Record: / }).evaluate((each) => each === document.activeElement),
    ).toBe(true);
    await panel.getByText(/^1 of 12 takes is there/).waitFor();
    await page.unroute("**/api/examine");
  });

  thoroughly("asks for the plan again where the service failed", async () => {
    const { page } = await site.stay();
    const panel = panelOf(page);
    await page.route("**/api/examine", (route) => route.fulfill({ status: 500, body: "" }));
    await openScenario(page, /blend pot/i);
    await showTab(page, "Measure");
    const again = panel.getByRole("button", { name: "Ask again" });
    await again.waitFor();
    await page.unroute("**/api/examine");
    await again.click();
    await panel.getByText(/^None of \d+ takes yet/).waitFor();
  });

  thoroughly("begins with a picture of what hangs where, the signal at hand, and what the plan notes", async () => {
    const { page } = await site.visit({ width: 390 });
    await page.route("**/api/examine", async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, json: { ...(await response.json()), notes: [NOTE] } });
    });
    const panel = await openJack(page);
    await panel.getByText(NOTE).waitFor();
    expect(await panel.getByText("/api/").count()).toBe(0);
    await panel.getByRole("img", { name: /^The output's tip goes to the tip of input 1 and/ }).waitFor();
    await panel.getByLabel("Which input is where").selectOption("behind-before");
    await panel.getByRole("img", { name: /^The output's tip goes to the tip of input 2 and/ }).waitFor();
    await panel.getByLabel("Which input is where").selectOption("before-behind");
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      panel.getByRole("button", { name: "Download it" }).click(),
    ]);
    const { sampleRateHz, channels } = decodeWav(await contentOf(saved));
    expect([sampleRateHz, channels[0]!.length / sampleRateHz]).toEqual([48_000, 16]);
    await panel.getByRole("button", { name: "Play the signal" }).click();
    await panel.getByText(/^Playing: /).waitFor();
    await panel.getByRole("button", { name: "Stop the signal" }).click();
    await panel.getByRole("button", { name: "Play the signal" }).waitFor();
    expect(await cutChoices(panel)).toEqual([]);
  });
});
