import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

/** Listens to everything that goes to a loudspeaker, from the page's first script on. */
async function listenIn(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const taps = new Map<BaseAudioContext, AnalyserNode>();
    const { connect } = AudioNode.prototype as { connect: (this: AudioNode, ...to: unknown[]) => unknown };
    AudioNode.prototype.connect = function (this: AudioNode, ...to: unknown[]) {
      if (to[0] instanceof AudioDestinationNode) {
        const tap = taps.get(this.context) ?? new AnalyserNode(this.context, { fftSize: 2048 });
        taps.set(this.context, tap);
        connect.call(this, tap);
      }
      return connect.apply(this, to);
    } as typeof AudioNode.prototype.connect;
    const heard = { peak: 0 };
    Object.assign(window, { heard });
    const samples = new Float32Array(2048);
    setInterval(() => {
      for (const tap of taps.values()) {
        tap.getFloatTimeDomainData(samples);
        for (const sample of samples) heard.peak = Math.max(heard.peak, Math.abs(sample));
      }
    }, 10);
  });
}

/** The loudest sample since the last call. */
async function peakSince(page: Page): Promise<number> {
  return page.evaluate(() => {
    const { heard } = window as unknown as { heard: { peak: number } };
    const { peak } = heard;
    heard.peak = 0;
    return peak;
  });
}

describeWith("chromium", "the live input", () => {
  const site = usePage();

  it("warns of feedback, starts very quiet, tells its latency, and sends nothing anywhere", async () => {
    const visit = await site.visit({ before: listenIn, isThrifty: false });
    const { page, context } = visit;
    await context.grantPermissions(["microphone"], { origin: site.origin });
    await whenReady(page);
    const sent: string[] = [];
    page.on("request", (request) => {
      if (request.method() !== "GET") sent.push(request.url());
    });
    await page.getByText("Play live through this guard").click();
    expect(await page.locator(".live-input .caution").textContent()).toMatch(/headphones.*howls/is);
    expect(await page.locator(".live-input .caution").isVisible()).toBe(true);
    await page.getByRole("button", { name: "Use the live input, quietly" }).click();
    await page.getByText("Press play to hear it.").waitFor();
    await page.getByRole("button", { name: "Play this setting" }).click();
    await page.getByRole("button", { name: "Stop" }).waitFor();
    const told = page.locator(".live-input").getByText(/ms from string to ear/);
    expect(Number(/About (\d+) ms/.exec((await told.textContent())!)![1])).toBeGreaterThan(0);

    await expect.poll(() => peakSince(page)).toBeGreaterThan(0);
    let quiet = 0;
    const beeps = 2500;
    for (const end = Date.now() + beeps; Date.now() < end; ) quiet = Math.max(quiet, await peakSince(page));
    // −40 dB of a full-scale beep, and what the guard's resonance adds.
    expect(quiet).toBeLessThan(0.02);
    await page.getByRole("slider", { name: "Level" }).fill("-20");
    await expect.poll(() => peakSince(page)).toBeGreaterThan(5 * quiet);
    await page.getByRole("button", { name: "Close the live input" }).click();
    expect(await page.getByRole("slider", { name: "Level" }).isVisible()).toBe(false);
    expect(sent).toEqual([]);
    expectQuiet(visit);
  });
});
