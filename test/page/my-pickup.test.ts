import { expect, it } from "vitest";
import { MEASURED_COILS, ratiosOf } from "../measured/measured-coils.ts";
import { describeWith } from "../tools.ts";
import { showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

const COIL = MEASURED_COILS.find(({ name }) => name === "01f8d06")!;

function pasted(load: "R" | "C"): string {
  const { frequenciesHz, levelsDb, degrees } = ratiosOf(COIL.name, load);
  return frequenciesHz.map((hertz, i) => `${hertz}, ${levelsDb[i]}, ${degrees[i]}`).join("\n");
}

describeWith("chromium", "a pickup of one's own", () => {
  const site = usePage();

  it("is worked out from its voltage without and with two loads, and put into the guard", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    await showTab(page, "Which part?");
    await page.getByLabel("What was measured").selectOption("two-loads");
    const form = page.locator("section", { has: page.getByRole("heading", { name: "My pickup" }) }).last();
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
