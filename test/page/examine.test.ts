import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { createPlansOfTakes } from "../../src/page/examine/plans-of-takes.ts";
import { isSameTake } from "../../src/page/examine/take-places.ts";
import { timesOf } from "../../src/page/examine/tap-timing.ts";
import { fractionAs } from "../../src/page/sound-card/percent.ts";
import { describeWith } from "../tools.ts";
import { openScenario, setFold, showTab, whenReady } from "./actions.ts";
import { usePage } from "./browser.ts";

const panelOf = (page: Page) => page.getByRole("region", { name: "Examining the finished guard" });
const SILENCE = {
  name: "silence.wav",
  mimeType: "audio/wav",
  buffer: Buffer.from(encodeWav({ sampleRateHz: 44_100, channels: [new Float32Array(44_100)] }, "pcm24")),
};
const BEFORE_OR_AFTER = /fed before or after the volume/i;
const FOLD = "Examine the finished guard with an audio interface";

/** Opens the fold upon a guard, and waits for its plan. */
async function examine(page: Page, title: RegExp): Promise<void> {
  await whenReady(page);
  await openScenario(page, title);
  await showTab(page, "Measure");
  await setFold(page, FOLD, true);
  await panelOf(page)
    .getByText(/^The plan: \d+ steps/)
    .waitFor();
}

describe("what is typed in for an examination", () => {
  it("may tell times in seconds or on a clock, and of silent rows a dash", () => {
    expect(timesOf("12.5; -, 20,5  0:02 1:07.5")).toEqual([12.5, null, 20.5, 2, 67.5]);
    expect(timesOf(" ")).toEqual([]);
  });

  it.each(["2.5s", "x", "--", "0:2", "-3", "1,2,3"])("may not tell %s for a time", (word) => {
    expect(() => timesOf(`1; ${word}; 3`)).toThrow(
      expect.objectContaining({
        faults: [{ path: "timing.times", message: expect.stringContaining(`has "${word}" for step 2; expected`) }],
      }),
    );
  });

  it("leaves out a tolerance that is not there", () => {
    expect(fractionAs("tolerance", "")).toEqual({});
    expect(fractionAs("tolerance", "0,5")).toEqual({ tolerance: 0.005 });
    expect(fractionAs("tolerance", "0")).toEqual({ tolerance: 0 });
    expect(fractionAs("tolerance", "about 1").tolerance).toBeNaN();
  });
});

describe("a recording", () => {
  const at = (position: number) => [{ position: `position ${position}`, at: 0 }];

  it("of taps stays with the steps that it was made by", () => {
    const [plans, file] = [createPlansOfTakes("taps"), new File([], "taps.wav")];
    const require = (position: number) => () => plans.require(file, at(position));
    expect(require(2)).not.toThrow();
    plans.keep(file, at(1));
    plans.keep(file, at(2));
    expect(require(1)).not.toThrow();
    expect(require(2)).toThrow(expect.objectContaining({ faults: [expect.objectContaining({ path: "taps" })] }));
  });

  it("of a setting is not that of another which is called alike", () => {
    const take = { settings: { lever: 2 }, through: "jack" as const, title: "lever 2", instruction: "", why: "" };
    expect(isSameTake(take, { ...take, why: "another" })).toBe(true);
    expect(isSameTake(take, { ...take, settings: { lever: 2, volume: 5 } })).toBe(false);
    expect(isSameTake(take, { ...take, through: { pickup: "neck", coil: "coil" } })).toBe(false);
  });
});

describeWith("chromium", "examining the finished guard", () => {
  const site = usePage();

  it("is planned with the usual cautions once, and tells beside a field and at a file what is wrong", async () => {
    const visit = await site.stay({ width: 390 });
    const { page } = visit;
    await examine(page, BEFORE_OR_AFTER);
    const panel = panelOf(page);
    await panel.getByText("The plan: 6 steps").click();
    await panel.getByRole("row", { name: /^3 .*position 2.*neck.*0:11/ }).waitFor();
    expect(await panel.getByText(/^Switch the interface's phantom power off/).count()).toBe(1);
    expect(await panel.getByText(/^Unplug the guitar from the amplifier\. /).count()).toBe(1);
    await panel.getByLabel("In a file, the rows were tapped").selectOption("hand");
    await panel.getByLabel("All taps in one take", { exact: true }).setInputFiles(SILENCE);
    const times = panel.getByLabel("When each step began");
    const ask = panel.getByRole("button", { name: "What sounds where?" });
    await times.fill("1.8; 5.8s");
    await ask.click();
    await panel.getByText(/has "5\.8s" for step 2; expected seconds/).waitFor();
    await times.fill("1; 2; 3; 4; 3.5; 6");
    await ask.click();
    await panel.getByText(/is 3\.5 s; expected more than 4 s/).waitFor();
    await times.fill("-; 6; 13; 17; 24; -");
    await ask.click();
    await panel
      .locator(".recording-slot")
      .getByText(/is silent: .*turn its gain up/)
      .waitFor();
    // The refusals themselves, which a browser complains of.
    expect(visit.complaints.filter((each) => !/status of 4\d\d/.test(each))).toEqual([]);
  });

  it("shows no answer about a guard that is not on the bench any more", async () => {
    const { page } = await site.stay();
    await examine(page, BEFORE_OR_AFTER);
    const panel = panelOf(page);
    await panel.getByLabel("All taps in one take", { exact: true }).setInputFiles(SILENCE);
    await panel.getByText(/^silence\.wav, /).waitFor();
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route("**/api/taps", async (route) => {
      if (route.request().headers()["content-type"]?.startsWith("multipart")) await held;
      await route.continue();
    });
    const asked = page.waitForRequest("**/api/taps");
    await panel.getByRole("button", { name: "What sounds where?" }).click();
    const answered = (await asked).response();
    await openScenario(page, /blend pot/i);
    await showTab(page, "Measure");
    await panel.getByText(/^The guard on the bench was changed meanwhile/).waitFor();
    release();
    await answered;
    await panel.getByText(/^The plan: \d+ steps/).waitFor();
    expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([
      expect.stringMatching(/changed meanwhile/),
    ]);
    await page.unroute("**/api/taps");
  });

  it("lets go of the takes of a guard when another is opened, and plans anew once it is seen", async () => {
    const { page } = await site.stay();
    await examine(page, /blend pot/i);
    const panel = panelOf(page);
    await panel.getByLabel("All taps in one take", { exact: true }).setInputFiles(SILENCE);
    await panel.getByText(/^silence\.wav, /).waitFor();
    const before = await panel.getByText(/^The plan: \d+ steps/).textContent();
    const asked: string[] = [];
    page.on("request", (request) => request.url().endsWith("/api/taps") && asked.push(request.url()));
    await setFold(page, FOLD, false);
    await openScenario(page, /treble bleed/i);
    await examine(page, BEFORE_OR_AFTER);
    expect(before).not.toBe("The plan: 6 steps");
    await panel.getByText("The plan: 6 steps").waitFor();
    expect(await panel.getByText(/^silence\.wav, /).count()).toBe(0);
    expect(asked).toHaveLength(1);
  });
});
