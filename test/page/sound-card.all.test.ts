import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { measuringSignal } from "../../src/measure/signal/measuring-signal.ts";
import { requireOneLevel } from "../../src/page/sound-card/one-level.ts";
import { COIL, heardUnder, INPUT, LOAD } from "../measure/simulated-pickup.ts";
import { recorded } from "../measure/simulated-recording.ts";
import { describeWith } from "../tools.ts";
import { openStart, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { hearing } from "./hearing.ts";

const RATE_HZ = 48_000;
const SIGNAL = measuringSignal("sweep", RATE_HZ);
const WORLD = { gain: 0.3, noise: 3e-5, hum: { hz: 50, peak: 1e-3 } } as const;
const UNLOADED = recorded(SIGNAL, RATE_HZ, { ...WORLD, transfer: heardUnder(INPUT), driftPpm: 40 });
const LOADED = recorded(SIGNAL, RATE_HZ, { ...WORLD, transfer: heardUnder(INPUT, LOAD), seed: 9 });

function wavFile(name: string, ...channels: Float32Array[]) {
  const bytes = encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm24");
  return { name, mimeType: "audio/wav", buffer: Buffer.from(bytes) };
}

/** Opens the panel with the loads and the input that the recordings were made with. */
async function openPanel(page: Page): Promise<Locator> {
  await whenReady(page);
  await showTab(page, "Which part?");
  await page.getByText("Measure a pickup, cap, pot or lead with an audio interface").click();
  const panel = page.getByRole("region", { name: "Measuring with an audio interface" });
  await panel.getByLabel("Its capacitance with the lead's").fill(String(INPUT.capacitance));
  await panel.getByLabel("DC resistance by meter").fill(String(COIL.resistance));
  return panel;
}

async function henriesFound(panel: Locator): Promise<number> {
  await panel.getByRole("button", { name: "Work out the values" }).click();
  const row = panel.getByRole("row", { name: /^inductance / });
  await row.or(panel.getByRole("alert")).first().waitFor();
  expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([]);
  const [, henries] = /([\d.]+) H/.exec((await row.textContent())!)!;
  return Number(henries);
}

const slot = (panel: Locator, label: string) => panel.locator(".recording-slot", { hasText: label });

it("compares no recordings that were made at different levels, unless the output itself was recorded too", () => {
  const slots = [
    { path: "unloaded", decibels: -30 },
    { path: "loaded", decibels: -20 },
    { path: "second", decibels: undefined },
  ];
  const request = { method: "two-loads", load: LOAD } as const;
  const asked = () => requireOneLevel(request, slots);
  expect(asked).toThrow(expect.objectContaining({ faults: [expect.objectContaining({ path: "loaded" })] }));
  expect(() => requireOneLevel({ ...request, reference: "first" }, slots)).not.toThrow();
});

describeWith("chromium", "measuring with an audio interface", () => {
  const site = usePage();

  it("makes a coil of files, says what they were like, and gives it to the guard and takes it back", async () => {
    const visit = await site.stay({ width: 390 });
    const { page } = visit;
    const panel = await openPanel(page);
    await panel.getByLabel("The pickup alone", { exact: true }).setInputFiles(wavFile("alone.wav", UNLOADED));
    await panel.getByLabel("With the load", { exact: true }).setInputFiles(wavFile("loaded.wav", LOADED));
    const henries = await henriesFound(panel);
    expect(Math.abs(henries / COIL.inductance - 1)).toBeLessThan(0.01);
    await panel.getByRole("row", { name: /^The pickup alone.*40\.\d ppm/ }).waitFor();
    const { scroll, client } = await page.evaluate(() => {
      const { scrollWidth: scroll, clientWidth: client } = document.documentElement;
      return { scroll, client };
    });
    expect(scroll).toBeLessThanOrEqual(client);
    await bringAxe(page);
    expect(await seriousFindings(page, ".sound-card")).toEqual([]);
    await panel.getByRole("button", { name: "Give it these values" }).click();
    await showTab(page, "Parts");
    const first = page.locator('[data-path$=".inductance"]').first();
    const inGuard = async () => Number.parseFloat(await first.inputValue());
    await expect.poll(async () => Math.abs((await inGuard()) / henries - 1)).toBeLessThan(0.01);
    await openStart(page);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(async () => Math.abs((await inGuard()) / henries - 1)).toBeGreaterThan(0.01);
    expectQuiet(visit);
  });

  it("says at the file that is refused what is wrong with it and what to do", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = page.getByRole("region", { name: "Measuring with an audio interface" });
    await panel
      .getByLabel("With the load", { exact: true })
      .setInputFiles(wavFile("loaded.wav", new Float32Array(RATE_HZ)));
    await panel.getByRole("button", { name: "Work out the values" }).click();
    await slot(panel, "With the load")
      .getByText(/the recording is silent.*turn its gain up/)
      .waitFor();
    expect(await panel.locator(".fault-text:visible").count()).toBe(1);
  });

  it("says that the input is not allowed, and where the browser gives none at all, and takes files all the same", async () => {
    const { page } = await site.stay();
    const alone = slot(page.locator(".sound-card"), "The pickup alone");
    // It holds a file, and so is folded.
    await alone.locator("summary").click();
    await alone.getByRole("button", { name: "Record: The pickup alone" }).click();
    await alone.getByText(/was not allowed.*choose the files/).waitFor();
    const without = async (other: Page) => {
      await other.addInitScript(() => Object.defineProperty(navigator, "mediaDevices", { value: undefined }));
    };
    const insecure = await site.visit({ before: without });
    const panel = await openPanel(insecure.page);
    await panel.getByText(/gives an input only to a page that came by https/).waitFor();
    expect(await panel.getByRole("button", { name: /^Record: / }).count()).toBe(0);
    expect(await panel.getByLabel("The pickup alone", { exact: true }).isEnabled()).toBe(true);
    expectQuiet(insecure);
  });

  it("measures a pot's track behind a resistor, and keeps it at the pot as measured", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = page.getByRole("region", { name: "Measuring with an audio interface" });
    await panel.getByLabel("What is measured").selectOption("resistor");
    // 231 kΩ behind 100 kΩ.
    const [before, behind] = [1, 231 / 331].map((gain, i) =>
      recorded(SIGNAL, RATE_HZ, { gain, noise: 1e-5, seed: i + 1 }),
    );
    const file = wavFile("pot.wav", before!, behind!);
    await panel.getByLabel("The resistor or track", { exact: true }).setInputFiles(file);
    await panel.getByRole("button", { name: "Work out the values" }).click();
    await panel.getByRole("row", { name: /^resistance.* 231 kΩ/ }).waitFor();
    await panel.getByLabel("Part", { exact: true }).selectOption({ index: 0 });
    await panel.getByRole("button", { name: "Give it this value" }).click();
    await showTab(page, "Parts");
    const tracks = page.locator('[data-path$=".measured"]');
    await expect
      .poll(() => tracks.evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value)))
      .toContain("231k");
  });

  it("plays the signal and records both loads by itself, and measures by what was recorded", async () => {
    const silence = new Float32Array(RATE_HZ);
    const [unloaded, loaded] = [UNLOADED, LOADED].map((each) => Float32Array.from([...silence, ...each, ...silence]));
    await hearing([unloaded!], RATE_HZ, async (page, hear) => {
      const panel = await openPanel(page);
      const alone = slot(panel, "The pickup alone");
      await alone.getByRole("button", { name: "Record: The pickup alone" }).click();
      await alone
        .getByText(/loudest −?-?\d+ dB/)
        .first()
        .waitFor();
      await alone.getByText("✓").waitFor();
      await hear([loaded!]);
      const withLoad = panel.getByRole("button", { name: "Record: With the load" });
      await withLoad.click();
      await slot(panel, "With the load").getByText("✓").waitFor();
      await slot(panel, "With the second load")
        .getByRole("button", { name: /^Record: / })
        .waitFor();
      const henries = await henriesFound(panel);
      expect(Math.abs(henries / COIL.inductance - 1)).toBeLessThan(0.02);
    });
  });
});
