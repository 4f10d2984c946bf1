import { expect, it } from "vitest";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { choosePosition, draftOf, openScenario, settled, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { lastPlayed, noteSounds, playedCount } from "./played.ts";
import { decodeFloatWav } from "./wav-spectrum.ts";

/** The most that the two may differ by, as a share of the sound's own power: 0.1 dB would be 1.3e-4. */
const MAX_ERROR_DB = -80;

function powerDb(samples: ArrayLike<number>): number {
  let sum = 0;
  for (let n = 0; n < samples.length; n++) sum += samples[n]! ** 2;
  return 10 * Math.log10(sum);
}

const CELLS = [
  { scenario: /HSS/, position: 1, tone: 10, matched: true, signal: "strum", hand: "dark", strings: "old" },
  { scenario: /HSS/, position: 5, tone: 10, matched: true, signal: "pluck", mains: "60" },
  { scenario: /HSS/, position: 2, tone: 3, matched: true, signal: "bend" },
  { scenario: /HSS/, position: 4, tone: 0, matched: false, signal: "strum" },
  { scenario: /long lead/, position: 1, tone: 5, matched: true, signal: "noise" },
  { scenario: /HSS/, position: 1, tone: 10, matched: true, signal: "strum", through: { drive: 7 } },
  { scenario: /HSS/, position: 5, tone: 10, matched: false, signal: "pluck", through: { drive: 0 } },
  { scenario: /HSS/, position: 3, tone: 10, matched: true, signal: "strum", mains: "50", through: { drive: 5 } },
  { scenario: /two humbuckers/i, position: 3, tone: 10, matched: true, signal: "pluck" },
];

describeWith("chromium", "what the page plays", () => {
  const site = usePage();

  it("is what the service's WAV holds", async () => {
    const visit = await site.visit({ before: noteSounds, isThrifty: false });
    const { page } = visit;
    await whenReady(page);
    await page.locator("option[value='sweep']").waitFor({ state: "attached" });
    for (const { scenario, position, tone, matched, signal, through, mains, ...playing } of casesOf(CELLS, 4)) {
      await openScenario(page, scenario);
      await choosePosition(page, position);
      for (const dial of await page.getByRole("slider", { name: /^Tone/ }).all()) await dial.fill(String(tone));
      await page.getByLabel("Same loudness").setChecked(matched);
      await page.getByLabel("Phrase").selectOption(signal);
      await page
        .getByRole("group", { name: "Hum and hiss" })
        .getByRole("radio", { name: mains ? `${mains} Hz` : "off" })
        .check();
      const { hand = "usual", strings = "used" } = playing;
      if (signal !== "noise") {
        await page.getByLabel("Hand", { exact: true }).selectOption(hand);
        await page.getByLabel("Strings", { exact: true }).selectOption(strings);
      }
      await page.getByLabel("Heard through").selectOption(through ? "clean" : "jack");
      if (through) await page.getByRole("slider", { name: "Drive" }).fill(String(through.drive));
      await settled(page);
      const before = await playedCount(page);
      await page.getByRole("button", { name: "Play this setting" }).click();
      await expect.poll(() => playedCount(page)).toBe(before + 1);
      const played = await lastPlayed(page);
      await page.getByRole("button", { name: "Stop" }).click();

      const { source: build, settings } = await draftOf(page);
      const level = matched ? "matched" : "true";
      const listening = through && { chain: "clean", ...through };
      const noise = mains ? { noise: { hum: mains, hiss: true } } : {};
      const asked = { build, settings, signal, ...playing, ...noise, listening };
      const request = { ...asked, level, rate: 48_000, encoding: "float32" };
      const answer = await page.request.post(`${site.origin}/api/preview`, { data: request });
      const rendered = decodeFloatWav(await answer.body());
      expect(played.sampleRateHz).toBe(rendered.sampleRateHz);
      expect(played.samples.length).toBe(rendered.samples.length);
      const error = played.samples.map((sample, n) => sample - rendered.samples[n]!);
      expect(powerDb(error) - powerDb(rendered.samples), `${signal}, position ${position}`).toBeLessThan(MAX_ERROR_DB);
    }
    expectQuiet(visit);
  });
});
