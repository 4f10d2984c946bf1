import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { measuringSignal } from "../../src/measure/signal/measuring-signal.ts";
import { planTaps } from "../../src/measure/taps/plan-taps.ts";
import { scenarioBuilds } from "../bench/scenario-builds.ts";
import { thoroughly } from "../effort.ts";
import { jackRecording } from "../examine/guard-recordings.ts";
import { benchOf, seeded, soldered } from "../examine/simulated-guard.ts";
import { START_SECONDS, withTurned } from "../measure/taps/tap-trials.ts";
import { tappedTake } from "../measure/taps/tapped-guard.ts";
import { describeWith } from "../tools.ts";
import { openScenario, setFold, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { hearing } from "./hearing.ts";

const RATE_HZ = 48_000;
const BUILD = scenarioBuilds.find(({ name }) => name === "tone-before-or-after-volume")!.build;
const FOLD = "Examine the finished guard with an audio interface";
const TITLE = /fed before or after the volume/i;

const wavFile = (name: string, bytes: Uint8Array) => ({ name, mimeType: "audio/wav", buffer: Buffer.from(bytes) });

async function openPanel(page: Page, title = TITLE): Promise<Locator> {
  await whenReady(page);
  await openScenario(page, title);
  await showTab(page, "Measure");
  await setFold(page, FOLD, true);
  return page.getByRole("region", { name: "Examining the finished guard" });
}

const turnedTake = () =>
  tappedTake(withTurned(BUILD, "neck", undefined), planTaps(BUILD), {
    rateHz: 44_100,
    seed: 4,
    late: () => 0.2,
  });

describeWith("chromium", "examining the finished guard", () => {
  const site = usePage();

  it("names the pickup that a take of taps shows turned about", async () => {
    const visit = await site.stay({ width: 390 });
    const { page } = visit;
    const panel = await openPanel(page);
    await panel.getByText("The plan: 6 steps").waitFor();
    const file = encodeWav({ sampleRateHz: 44_100, channels: [turnedTake()] }, "pcm16");
    await panel.getByLabel("All taps in one take", { exact: true }).setInputFiles(wavFile("taps.wav", file));
    await panel.getByRole("button", { name: "What sounds where?" }).click();
    await panel.getByRole("heading", { name: /is out of phase with the/ }).waitFor();
    await panel.getByRole("row", { name: /^position 1: neck.*should be silent.*silent/ }).waitFor();
    const { scroll, client } = await page.evaluate(() => {
      const { scrollWidth: scroll, clientWidth: client } = document.documentElement;
      return { scroll, client };
    });
    expect(scroll).toBeLessThanOrEqual(client);
    await bringAxe(page);
    expect(await seriousFindings(page, ".sound-card")).toEqual([]);
    expectQuiet(visit);
  });

  it("takes times that are said by hand, and says beside them what they lack", async () => {
    const { page } = await site.stay();
    const panel = page.getByRole("region", { name: "Examining the finished guard" });
    const [times, ask] = [
      panel.getByLabel("When each step began"),
      panel.getByRole("button", { name: "What sounds where?" }),
    ];
    await panel.getByLabel("In a file, the rows were tapped").selectOption("hand");
    await times.fill("1.8; 5.8");
    await ask.click();
    await panel.getByText(/has 2 times; expected 6, one for each step/).waitFor();
    await times.fill("2; -; 13; 17; 24; -");
    await ask.click();
    await panel.getByRole("heading", { name: /is out of phase with the/ }).waitFor();
    await panel.getByRole("row", { name: /^position 1: neck.*should be silent.*silent/ }).waitFor();
  });

  it("records taps by itself, says which row is due, and maps what sounds; not under a closed fold, nor of a guard that changes", async () => {
    const [blend] = scenarioBuilds.filter(({ name }) => name === "blend-for-a-toggle");
    const steps = planTaps(blend!.build);
    // The page begins its first step five seconds in.
    const taps = tappedTake(blend!.build, steps, { rateHz: RATE_HZ, seed: 6 });
    const lead = new Float32Array((5 - START_SECONDS) * RATE_HZ);
    await hearing([Float32Array.from([...lead, ...taps])], RATE_HZ, async (page) => {
      const panel = await openPanel(page, /blend pot/i);
      await panel.getByText(`The plan: ${steps.length} steps`).waitFor();
      const record = panel.getByRole("button", { name: "Record: All taps in one take" });
      const stop = panel.getByRole("button", { name: "Stop", exact: true });
      const fold = page.getByText(FOLD);
      await record.click();
      await stop.waitFor();
      await fold.click();
      await stop.waitFor({ state: "detached" });
      await fold.click();
      await panel.getByText("Stopped: nothing of it was kept.").waitFor();
      await record.click();
      await panel.getByText(/^Tap three times: /).waitFor();
      await panel.getByText(/^taps\.wav, /).waitFor();
      await panel.getByRole("button", { name: "What sounds where?" }).click();
      await panel.getByRole("heading", { name: /^As drawn/ }).waitFor();
      await record.click();
      await stop.waitFor();
      await openScenario(page, TITLE);
      await showTab(page, "Measure");
      await panel.getByText(/^The guard on the bench was changed meanwhile/).waitFor();
      expect(await stop.or(panel.getByText(/^taps\.wav, /)).count()).toBe(0);
      expect(await panel.getByRole("heading", { name: /^As drawn/ }).count()).toBe(0);
    });
  });

  thoroughly("records the takes at the jack by itself, and says that the guard is as drawn", async () => {
    const random = seeded(5);
    const [guard, bench] = [soldered(BUILD, [], random), benchOf(47e3, random)];
    const controls = new Controls(BUILD);
    const signal = measuringSignal("sweep", RATE_HZ);
    const recordingIn = (toggle: number) =>
      jackRecording(signal, RATE_HZ, guard, parseSettings(controls, { toggle }), bench, random);
    const silence = new Float32Array(RATE_HZ);
    const heardIn = (toggle: number) =>
      decodeWav(recordingIn(toggle)).channels.map((each) => Float32Array.from([...silence, ...each, ...silence]));
    await hearing(heardIn(1), RATE_HZ, async (page, hear) => {
      const panel = await openPanel(page);
      const taps = tappedTake(guard, planTaps(BUILD), { rateHz: RATE_HZ, seed: 9, late: () => 0 });
      const tapped = wavFile("taps.wav", encodeWav({ sampleRateHz: RATE_HZ, channels: [taps] }, "pcm16"));
      await panel.getByLabel("All taps in one take", { exact: true }).setInputFiles(tapped);
      await panel.getByLabel("Examine it").selectOption("jack");
      await panel
        .getByText(/^Why: what this position lets in, all knobs at 10\.$/)
        .first()
        .waitFor();
      for (const position of [1, 2, 3]) {
        await hear(heardIn(position));
        await panel.getByRole("button", { name: `Record: toggle in position ${position}`, exact: true }).click();
        await panel.getByText(new RegExp(`^${position} of \\d+ takes (is|are) there`)).waitFor();
      }
      await panel.getByRole("button", { name: "Hold it to the drawing" }).click();
      const heading = panel.locator(".examined h4").first();
      await heading.or(panel.locator(".fault-text:visible")).first().waitFor({ timeout: 60_000 });
      expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([]);
      expect(await heading.textContent()).toMatch(/as drawn/i);
      await panel.getByText(/position 1: agrees with the drawing/).click();
      await panel.locator(".take-figure canvas").waitFor();
    });
  });
});
