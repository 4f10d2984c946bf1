import { unzipSync } from "fflate";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { contentOf } from "./download.ts";
import { filtersUsed, lastPlayed, noteSounds, playedCount } from "./played.ts";
import { decodeFloatWav } from "./wav-spectrum.ts";

const wav = (sampleRateHz: number, samples: Float32Array) => {
  const bytes = encodeWav({ sampleRateHz, channels: [samples] }, "pcm24");
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
};

const CABINET = wav(
  44_100,
  Float32Array.from({ length: 3000 }, (_, n) => 0.5 * Math.exp(-n / 150) * Math.cos(0.4 * n) + (n === 900 ? 0.1 : 0)),
);

/** A note that dies away, half a volt at first. */
const RIFF = wav(
  48_000,
  Float32Array.from({ length: 24_000 }, (_, n) => 0.5 * Math.exp(-n / 6000) * Math.sin(0.015 * n + 0.3 * Math.sin(n))),
);

const give = (page: Page, label: string, name: string, buffer: Buffer) =>
  page.getByLabel(label).setInputFiles({ name, mimeType: "audio/wav", buffer });

/** How far one sound is from another, in dB of the other's power. */
function errorDb(found: Float32Array, wanted: Float32Array): number {
  const power = (samples: Float32Array) => samples.reduce((sum, sample) => sum + sample ** 2, 0);
  return 10 * Math.log10(power(found.map((sample, n) => sample - (wanted[n] ?? 0))) / power(wanted));
}

function formOf(request: object, files: Readonly<Record<string, Buffer>>) {
  const entries = Object.entries(files).map(([name, buffer]) => {
    return [name, { name: `${name}.wav`, mimeType: "audio/wav", buffer }] as const;
  });
  return { request: JSON.stringify(request), ...Object.fromEntries(entries) };
}

describeWith("chromium", "what the guard is heard through, in full", () => {
  const site = usePage();

  it("takes one's own cabinet, plays through it what the service makes, and sends it along for the whole set", async () => {
    const visit = await site.visit({ before: noteSounds, isThrifty: false });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await page.getByLabel("Heard through").selectOption("own");
    const fields = page.locator(".chain-fields");
    await expect
      .poll(() => fields.textContent())
      .toMatch(/no page keeps.*until there is one the usual speaker is heard/);
    await give(page, "Your cabinet's WAV…", "mine.wav", CABINET);
    await expect
      .poll(() => fields.textContent())
      .toMatch(/mine\.wav, brought to the usual speaker's level; to be chosen again/);
    await page.getByRole("slider", { name: "Drive" }).fill("6");
    await page.getByLabel("Phrase").selectOption("pluck");
    await settled(page);
    const before = await playedCount(page);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await expect.poll(() => playedCount(page)).toBe(before + 1);
    const played = await lastPlayed(page);
    await page.getByRole("button", { name: "Stop" }).click();
    const { source: build, settings } = await draftOf(page);
    const listening = { chain: "clean", drive: 6, cabinet: "own" };
    const request = {
      build,
      settings,
      signal: "pluck",
      level: "matched",
      rate: 48_000,
      encoding: "float32",
      listening,
    };
    const answer = await page.request.post(`${site.origin}/api/preview`, {
      multipart: formOf(request, { cabinet: CABINET }),
    });
    expect(answer.headers()["presolder-listening"]).toBe("clean amplifier and own cabinet, drive 6");
    const { samples } = decodeFloatWav(await answer.body());
    expect(played.samples.length).toBe(samples.length);
    expect(errorDb(played.samples, samples)).toBeLessThan(-80);

    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "All settings as ZIP" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/-previews-clean-own-cabinet-drive-6\.zip$/);
    const manifest = JSON.parse(Buffer.from(unzipSync(await contentOf(download))["manifest.json"]!).toString());
    expect(manifest.listening).toMatchObject({ chain: "clean", drive: 6, cabinet: "own" });
    expectQuiet(visit);
  });

  it("refuses a file that is no cabinet in plain words, and says so in blind test and board what is heard", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await page.getByLabel("Heard through").selectOption("own");
    await page.locator(".chain-fields").waitFor();
    await give(page, "Your cabinet's WAV…", "song.wav", wav(8000, new Float32Array(16_000).fill(0.1)));
    await expect
      .poll(() => page.locator(".notice").textContent())
      .toMatch(/song\.wav cannot be heard through: .*2.* s/);
    await give(page, "Your cabinet's WAV…", "cat.wav", Buffer.from("not a sound"));
    await expect.poll(() => page.locator(".notice").textContent()).toContain("cat.wav cannot be heard through");
    await showTab(page, "Blind test");
    const blind = page.locator("#panel-blind");
    await expect
      .poll(() => blind.textContent())
      .toContain("Heard through a clean amplifier and 12-inch speaker, drive 0.");
    await page.getByLabel("Heard through").selectOption("jack");
    await expect.poll(() => blind.textContent()).toContain("Heard as it comes out of the jack.");
  });

  it("puts amplifier and speaker behind the guard's filter where one's own recording is played", async () => {
    const visit = await site.visit({ before: noteSounds });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await page.getByLabel("Same loudness").uncheck();
    await page.getByLabel("Loop").uncheck();
    await give(page, "Your own WAV…", "riff.wav", RIFF);
    await page.getByLabel("Heard through").selectOption("clean");
    for (const drive of [0, 7]) {
      await page.getByRole("slider", { name: "Drive" }).fill(String(drive));
      await settled(page);
      const count = (await filtersUsed(page)).length;
      await page.getByRole("button", { name: "Play this setting" }).click();
      // Guard and speaker.
      await expect.poll(async () => (await filtersUsed(page)).length).toBe(count + 2);
      await page.getByRole("button", { name: "Play this setting" }).waitFor();
    }
    expectQuiet(visit);
  });

  it("has its dial, file field and words within 390 px, clean for axe", async () => {
    const { page } = await site.visit({ width: 390, height: 844 });
    await whenReady(page);
    await page.getByText("What is played, and how").click();
    await page.getByLabel("Heard through").selectOption("own");
    await page.locator(".chain-fields").waitFor();
    expect(await page.locator(".chosen-words").textContent()).toContain("impulse response of your own");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bringAxe(page);
    expect(await seriousFindings(page, ".play-bar")).toEqual([]);
  });
});
