import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { describeWith } from "../tools.ts";
import { choosePosition, draftOf, openScenario, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { filtersUsed, lastPlayed, noteSounds, playedCount } from "./played.ts";
import { decodeFloatWav } from "./wav-spectrum.ts";

function sameTaps(one: Float32Array, other: Float32Array): boolean {
  return one.length === other.length && one.every((tap, n) => Math.abs(tap - other[n]!) < 1e-7);
}

function ownWav(): Buffer {
  const samples = Float32Array.from({ length: 48_000 }, (_, n) => 0.1 * Math.sin((2 * Math.PI * 220 * n) / 48_000));
  const bytes = encodeWav({ sampleRateHz: 48_000, channels: [samples] }, "pcm16");
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

describeWith("chromium", "one's own recording", () => {
  const site = usePage();

  it("plays through the guard without being uploaded, and a turned knob brings the next filter, the same as the service makes", async () => {
    const visit = await site.visit({ before: noteSounds });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const posted: string[] = [];
    page.on("request", (request) => {
      if (request.method() === "POST")
        posted.push(`${new URL(request.url()).pathname} ${request.headers()["content-type"]}`);
    });
    await page.getByLabel("Your own WAV…").setInputFiles({ name: "riff.wav", mimeType: "audio/wav", buffer: ownWav() });
    await page.getByRole("button", { name: "Play this setting" }).click();
    await page.getByRole("button", { name: "Stop" }).waitFor();
    const first = (await filtersUsed(page)).at(-1)!;
    await choosePosition(page, 2);
    await expect.poll(async () => sameTaps((await filtersUsed(page)).at(-1)!, first)).toBe(false);
    const { source: build, settings } = await draftOf(page);
    const code = await (await page.request.post(`${site.origin}/api/link`, { data: { build } })).json();
    const answer = await page.request.get(`${site.origin}/api/impulse.wav`, {
      params: { build: code.code, rate: 48_000, ...settings },
    });
    const { samples } = decodeFloatWav(await answer.body());
    // Doubles rounded to single precision on both sides.
    expect(sameTaps((await filtersUsed(page)).at(-1)!, samples)).toBe(true);
    await page.getByRole("button", { name: "Stop" }).click();
    expect(posted).toEqual([]);
    expectQuiet(visit);
  });

  it("hums and hisses where that is chosen, as the setting does", async () => {
    const visit = await site.visit({ before: noteSounds });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await choosePosition(page, 5);
    await page.getByLabel("Your own WAV…").setInputFiles({ name: "riff.wav", mimeType: "audio/wav", buffer: ownWav() });
    // What matches loudness plays it once more, where nobody hears it.
    await page.getByLabel("Same loudness").uncheck();
    await page.getByRole("button", { name: "Play this setting" }).click();
    await expect.poll(() => playedCount(page)).toBe(1);
    await page.getByRole("group", { name: "Hum and hiss" }).getByRole("radio", { name: "50 Hz" }).check();
    // Hum and hiss each, over a time of its own.
    await expect.poll(() => playedCount(page)).toBe(3);
    const { samples } = await lastPlayed(page);
    const rms = Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
    // Microvolts: of some kilohms and the amplifier's input.
    expect(rms).toBeGreaterThan(2e-6);
    expect(rms).toBeLessThan(2e-5);
    await page.getByRole("button", { name: "Stop" }).click();
    expectQuiet(visit);
  });

  it("is refused in plain words, before anything is played, where it is no sound", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    await page.getByLabel("Your own WAV…").setInputFiles({
      name: "cat.wav",
      mimeType: "audio/wav",
      buffer: Buffer.from("not a sound at all"),
    });
    await expect.poll(() => page.locator(".notice").textContent()).toContain("cat.wav cannot be read as sound");
    expect(await page.locator(".drop .file-name").textContent()).toBe("or drop one here");
  });

  it("goes with the request where every setting is wanted as a ZIP", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    await openScenario(page, /long lead/);
    await page.getByLabel("Your own WAV…").setInputFiles({ name: "riff.wav", mimeType: "audio/wav", buffer: ownWav() });
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "All settings as ZIP" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/-previews\.zip$/);
    const head = await (await download.createReadStream()).take(1).toArray();
    expect((head[0] as Buffer).toString("latin1", 0, 2)).toBe("PK");
  });
});
