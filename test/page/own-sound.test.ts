import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { describeWith } from "../tools.ts";
import { choosePosition, openScenario, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

function ownWav(): Buffer {
  const samples = Float32Array.from({ length: 48_000 }, (_, n) => 0.1 * Math.sin((2 * Math.PI * 220 * n) / 48_000));
  const bytes = encodeWav({ sampleRateHz: 48_000, channels: [samples] }, "pcm16");
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

describeWith("chromium", "one's own recording", () => {
  const site = usePage();

  it("plays through the guard without being uploaded, and a turned knob fetches the next filter", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    const posted: string[] = [];
    page.on("request", (request) => {
      if (request.method() === "POST")
        posted.push(`${new URL(request.url()).pathname} ${request.headers()["content-type"]}`);
    });
    await page.getByLabel("Your own WAV…").setInputFiles({ name: "riff.wav", mimeType: "audio/wav", buffer: ownWav() });
    const isImpulse = (url: string) => url.includes("/api/impulse.wav");
    const [first] = await Promise.all([
      page.waitForResponse((response) => isImpulse(response.url())),
      page.getByRole("button", { name: "Play this setting" }).click(),
    ]);
    expect(first.status()).toBe(200);
    await page.getByRole("button", { name: "Stop" }).waitFor();
    const [second] = await Promise.all([
      page.waitForResponse((response) => isImpulse(response.url()) && response.url() !== first.url()),
      choosePosition(page, 2),
    ]);
    expect(new URL(second.url()).searchParams.get("lever")).toBe("2");
    await page.getByRole("button", { name: "Stop" }).click();
    expect(posted.filter((each) => each.includes("multipart"))).toEqual([]);
    expect(posted.filter((each) => each.startsWith("/api/preview"))).toEqual([]);
    expectQuiet(visit);
  });

  it("is refused in plain words, before anything is played, where it is no sound", async () => {
    const { page } = await site.visit();
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
    const { page } = await site.visit();
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
