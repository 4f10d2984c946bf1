import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { coilImpedance } from "../../src/choice/fit/coil-model.ts";
import { measuringSignal } from "../../src/measure/signal/measuring-signal.ts";
import { thoroughly } from "../effort.ts";
import { exciterAt, heardFrom, pole, product, ROD_COIL } from "../measure/simulated-metal.ts";
import { admittance, COIL, type Complex, LOAD, over } from "../measure/simulated-pickup.ts";
import { filtered } from "../measure/simulated-recording.ts";
import { describeWith } from "../tools.ts";
import { openStart, showTab, whenReady } from "./actions.ts";
import { usePage } from "./browser.ts";
import { cutChoices } from "./cut-choices.ts";
import { contentOf } from "./download.ts";

const RATE_HZ = 48_000;
const SIGNAL = measuringSignal("sweep", RATE_HZ);

/** A stereo file: before a resistor, and behind it over an impedance. */
function behind(ohms: number, impedance: (hz: number) => Complex): Buffer {
  const transfer = (hz: number) => {
    const [re, im] = impedance(Math.max(hz, 1));
    return over([re, im], [re + ohms, im]);
  };
  const channels = [SIGNAL, filtered(SIGNAL, RATE_HZ, transfer)];
  // Rounded to 16 bits, and dithered: noise enough.
  return Buffer.from(encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm16"));
}

const capacitor =
  (farads: number) =>
  (hz: number): Complex => [0, -1 / (2 * Math.PI * hz * farads)];
const INPUT = { resistance: 1e6, capacitance: 150e-12 };
const LEAD_FARADS = 480e-12;
/** A lead with the input's own megohm and picofarads across it. */
const leadAtInput = (hz: number): Complex =>
  over([1, 0], admittance({ ...INPUT, capacitance: LEAD_FARADS + INPUT.capacitance }, hz));
const coil = (hz: number): Complex => {
  const { re, im } = coilImpedance(COIL, hz);
  return [re, im];
};

const WAV_FILE = { name: "heard.wav", mimeType: "audio/wav" } as const;
const covered = product(exciterAt(3400), pole(3500));

/** What an input has of a coil, rounded to 16 bits. */
function heard(transfer: (hz: number) => Complex): Buffer {
  const through = filtered(SIGNAL, RATE_HZ, transfer).map((each) => 0.3 * each);
  return Buffer.from(encodeWav({ sampleRateHz: RATE_HZ, channels: [through] }, "pcm16"));
}

const panelOf = (page: Page) => page.getByRole("region", { name: "Measuring with an audio interface" });

async function measured(panel: Locator, way: string, label: string, buffer: Buffer, row: RegExp): Promise<void> {
  await panel.getByLabel("What is measured").selectOption(way);
  await panel.getByLabel(label, { exact: true }).setInputFiles({ name: `${way}.wav`, mimeType: "audio/wav", buffer });
  await panel.getByRole("button", { name: "Work out the values" }).click();
  const told = panel.getByRole("row", { name: row });
  await told.or(panel.locator(".fault-text:visible")).first().waitFor();
  expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([]);
}

const valuesAt = (page: Page, path: string) =>
  page.locator(`[data-path$="${path}"]`).evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));

/** Drops a file on an element, as from a folder's window. */
async function drop(target: Locator, name: string, buffer: Buffer): Promise<void> {
  const transfer = await target.page().evaluateHandle(
    ([file, base64]) => {
      const bytes = Uint8Array.from(atob(base64!), (each) => each.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], file!, { type: "audio/wav" }));
      return data;
    },
    [name, buffer.toString("base64")],
  );
  await target.dispatchEvent("drop", { dataTransfer: transfer });
}

const small = Buffer.from(encodeWav({ sampleRateHz: RATE_HZ, channels: [new Float32Array(480)] }, "pcm24"));

describeWith("chromium", "the ways of measuring with an audio interface", () => {
  const site = usePage();

  it("measure a cap and give its value to one of the guard", async () => {
    const { page } = await site.stay();
    await whenReady(page);
    await showTab(page, "Which part?");
    await page.getByText("Measure a pickup, cap, pot or lead with an audio interface").click();
    const panel = panelOf(page);
    await measured(panel, "capacitor", "The cap", behind(4700, capacitor(23.1e-9)), /^capacitance.* 23\.\d* nF/);
    await panel.getByText(/^The input's own resistance and capacitance.* are in the values told/).waitFor();
    await panel.getByRole("button", { name: "Give it this value" }).click();
    await showTab(page, "Parts");
    await expect.poll(() => valuesAt(page, ".capacitance")).toContainEqual(expect.stringMatching(/^23(\.\d+)?n/));
  });

  it("measure a lead at an input whose own values are typed in, and give what a metre of it has to the guard's cable", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    await panel.getByLabel("What is measured").selectOption("lead");
    await panel.getByLabel("The input's resistance, if known").fill("one megohm");
    await panel.getByLabel("Its capacitance with the lead's").fill(String(INPUT.capacitance));
    const file = { ...WAV_FILE, buffer: behind(470_000, leadAtInput) };
    await panel.getByLabel("The lead", { exact: true }).setInputFiles(file);
    await panel.getByRole("button", { name: "Work out the values" }).click();
    await panel.locator(".field", { hasText: "The input's resistance" }).locator(".fault-text:visible").waitFor();
    await panel.getByLabel("The input's resistance, if known").fill("1M");
    await measured(panel, "lead", "The lead", file.buffer, /^capacitance.* 4[78]\d(\.\d+)? pF/);
    await panel.getByText(/were taken out as stated, without an error/).waitFor();
    const button = panel.getByRole("button", { name: /^Give it to the guard's cable, as one of [\d.]+ m$/ });
    const metres = Number(/of ([\d.]+) m/.exec((await button.textContent())!)![1]);
    await button.click();
    await showTab(page, "Parts");
    const [perMetre] = await valuesAt(page, "cable.capacitance");
    expect(Number.parseFloat(perMetre!) * metres).toBeCloseTo(1e12 * LEAD_FARADS, -1.2);
  });

  thoroughly("measure a coil behind a resistor and give it to one of the guard, and take it back", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    await measured(panel, "coil", "The coil", behind(10_000, coil), /^inductance.* 3\.2\d* H/);
    await panel.getByRole("button", { name: "Give it these values" }).click();
    await showTab(page, "Parts");
    const first = async () => Number.parseFloat((await valuesAt(page, ".inductance"))[0]!);
    await expect.poll(first).toBeCloseTo(COIL.inductance, 1);
    await openStart(page);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(first).not.toBeCloseTo(COIL.inductance, 1);
  });

  it("keep one recording open at a time, and cut off no choice on a phone", async () => {
    const { page } = await site.stay({ width: 390 });
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    const choice = panel.getByLabel("What is measured");
    for (const way of ["pickup", "metal", "coil", "capacitor", "resistor", "lead"]) {
      await choice.selectOption(way);
      expect(await cutChoices(panel), way).toEqual([]);
      expect(await panel.locator(".recording-slot[open]").count(), way).toBe(1);
    }
  });

  it("take a file that is dropped, leave it out again, and hand back what they have", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    const slot = panel.locator(".recording-slot", { hasText: "Without the part" });
    await drop(slot, "open.wav", small);
    await slot.getByText("✓").waitFor();
    await slot.locator("summary").click();
    await slot.getByText(/^open\.wav, /).waitFor();
    const [kept] = await Promise.all([
      page.waitForEvent("download"),
      slot.getByRole("button", { name: "Save: Without the part" }).click(),
    ]);
    expect(kept.suggestedFilename()).toBe("open.wav");
    expect(await contentOf(kept)).toEqual(small);
    await slot.getByRole("button", { name: "Leave out: Without the part" }).click();
    await slot.getByText("none yet, or drop one here").waitFor();
  });

  it("save the signal for another program, and say without a net that it waits", async () => {
    const { page, context } = await site.stay();
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    await panel.getByText("Record with another program", { exact: true }).click();
    await panel.getByLabel("Rate of the file").selectOption("44100");
    const save = panel.getByRole("button", { name: "Save the signal as a file" });
    const [saved] = await Promise.all([page.waitForEvent("download"), save.click()]);
    expect(saved.suggestedFilename()).toBe("measuring-signal-sweep-44100.wav");
    const { sampleRateHz, channels } = decodeWav(await contentOf(saved));
    expect([sampleRateHz, channels[0]!.length / sampleRateHz]).toEqual([44_100, 16]);
    await panel.getByText(/Without a net neither the signal nor an answer can be had/).waitFor();
    await panel.getByLabel("Rate of the file").selectOption("96000");
    await context.setOffline(true);
    try {
      await save.click();
      await page.getByText(/needs the service, which cannot be reached now/).waitFor();
    } finally {
      await context.setOffline(false);
    }
    await page.waitForEvent("download");
  });

  thoroughly("tell what a cover takes of a pickup's sound and give it to a coil of the guard", async () => {
    const { page } = await site.stay();
    await showTab(page, "Which part?");
    const panel = panelOf(page);
    await panel.getByLabel("What is measured").selectOption("metal");
    const typed = {
      "The pickup's DC resistance": COIL.resistance,
      "Reference coil's DC resistance": ROD_COIL.resistance,
    };
    const further = {
      "Its inductance": ROD_COIL.inductance,
      "Its own capacitance": "130p",
      "Its loss resistor": "700k",
    };
    for (const [label, value] of Object.entries({ ...typed, ...further }))
      await panel.getByLabel(label).fill(String(value));
    expect(await panel.getByLabel("The integrator's corner").isVisible()).toBe(false);
    for (const [label, transfer] of [
      ["The pickup with its metal, alone", heardFrom(COIL, covered, INPUT)],
      ["The same with the load", heardFrom(COIL, covered, INPUT, LOAD)],
      ["The reference coil in its place (may be left out)", heardFrom(ROD_COIL, exciterAt(3400), INPUT)],
    ] as const)
      await panel.getByLabel(label, { exact: true }).setInputFiles({ ...WAV_FILE, buffer: heard(transfer) });
    await panel.getByRole("button", { name: "Work out the values" }).click();
    const told = panel.getByRole("row", { name: /^falls from 3\.5\d* kHz|^falls from 3\.49\d* kHz/ });
    await told.or(panel.locator(".fault-text:visible")).first().waitFor();
    expect(await panel.locator(".fault-text:visible").allTextContents()).toEqual([]);
    await panel.getByText(/up to 0.15 dB at 1 kHz and 1 dB above 3 kHz of what the metal takes/).waitFor();
    await panel.getByRole("button", { name: "Give it this metal" }).click();
    await showTab(page, "Parts");
    await expect.poll(() => valuesAt(page, ".shielding")).toContain("own");
  });
});
