import { expect, it } from "vitest";
import { peakHz } from "../../src/choice/fit/resonance-peak.ts";
import { MEASURED_COILS, ratiosOf } from "../measured/measured-coils.ts";
import { describeWith } from "../tools.ts";
import { showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

const COIL = MEASURED_COILS.find(({ name }) => name === "01f8d06")!;

function pasted(load: "R" | "C"): string {
  const { frequenciesHz, levelsDb, degrees } = ratiosOf(COIL.name, load);
  return frequenciesHz.map((hertz, i) => `${hertz}, ${levelsDb[i]}, ${degrees[i]}`).join("\n");
}

/** Cap and resonance, as somebody writes them down who has nothing but a generator and a voltmeter. */
const RESONANCES = [0, 470, 1000]
  .map((picofarads) => {
    const coil = { ...COIL, loss: [COIL.section!] };
    const hertz = peakHz(coil, { resistance: 1e6, capacitance: picofarads * 1e-12 }, "impedance");
    return `${picofarads}p, ${hertz.toFixed(0)}`;
  })
  .join("\n");

describeWith("chromium", "a pickup of one's own", () => {
  const site = usePage();

  it("is worked out from its resonances and what stands in it, or its voltage under two loads, and put into the guard", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await showTab(page, "Which part?");
    const form = page.locator("section", { has: page.getByRole("heading", { name: "My pickup" }) }).last();

    // Its resonances alone leave open what its steel takes, until it is said what stands in it.
    await page.getByLabel("What was measured").selectOption("resonances");
    await form.getByLabel("DC resistance").fill(String(COIL.resistance));
    await form.getByLabel("Cap across it, resonance").fill(RESONANCES);
    await form.getByRole("button", { name: "Work out the coil" }).click();
    await form.getByText("Say what kind of pickup it is").waitFor();
    await form.getByLabel("What stands in it").selectOption("wide-single");
    await form.getByRole("button", { name: "Work out the coil" }).click();
    await form.getByText("taken as such pickups have it as a rule").waitFor();
    expect(await form.getByText("Say what kind of pickup it is").count()).toBe(0);
    expect(await form.getByRole("row", { name: /^core loss 1, resistance/ }).count()).toBeGreaterThan(0);

    await page.getByLabel("What was measured").selectOption("two-loads");
    await form.getByText("Touch neither the gain nor the coil").waitFor();
    await form.getByLabel("Hz, dB, degrees: without the load over with it").fill(pasted("R"));
    await form.getByLabel("The same under a second load (may be left out)").fill(pasted("C"));
    await form.getByLabel("DC resistance").fill(String(COIL.resistance));
    await form.getByRole("button", { name: "Work out the coil" }).click();
    const inductance = form.getByRole("row", { name: /^inductance / });
    await inductance.waitFor();
    const [, henries] = /inductance\s*([\d.]+) H/.exec((await inductance.textContent())!)!;
    expect(Math.abs(Number(henries) / COIL.inductance - 1)).toBeLessThan(0.1);
    await form.getByRole("button", { name: "Give it these values" }).click();
    await showTab(page, "Parts");
    // The first coil of the guard is offered first.
    const first = page.locator('[data-path$=".inductance"]').first();
    await expect
      .poll(async () => Math.abs(Number.parseFloat(await first.inputValue()) / Number(henries) - 1))
      .toBeLessThan(0.01);
    expectQuiet(visit);
  });
});
