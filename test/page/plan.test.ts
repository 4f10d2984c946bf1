import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { presetGuard } from "../fixtures/harness.ts";
import { describeWith } from "../tools.ts";
import { draftOf, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

interface Guard {
  readonly parts: Readonly<Record<string, { kind: string; capacitance?: string; drives?: unknown }>>;
  readonly wires: readonly { from: string; to: string }[];
}

describeWith("chromium", "a guard as a plan", () => {
  const site = usePage();

  async function openGuard(guard: object) {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const file = { name: "guard.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(guard)) };
    await page.getByLabel("Open build file").setInputFiles(file);
    await expect.poll(async () => (await draftOf(page)).source).toEqual(guard);
    await showTab(page, "Plan");
    await page.locator(".plan-group").first().waitFor();
    return visit;
  }

  /** Waits until what was chosen is carried out, and the form shows it. */
  const planned = async (page: Page) => {
    await page.locator("#panel-plan [aria-busy='true']").waitFor({ state: "detached" });
    await settled(page);
  };
  const guardOn = async (page: Page) => (await draftOf(page)).source as Guard;
  const field = (page: Page, id: string) => page.locator(`[data-plan="${id}"]`);
  const changed = (page: Page) => page.locator("#panel-plan .change-line").textContent();
  const undo = async (page: Page) => {
    await page.getByRole("button", { name: "Undo" }).first().click();
    await settled(page);
  };
  /** What the drawing's audit says, without its notes. */
  const wrong = (page: Page) => page.locator(".found .finding-fault, .found .finding-warning").count();

  it("turns three single coils into HSS by one choice, tells what changed, and takes it back byte for byte", async () => {
    const guard = presetGuard("singles-neck-middle");
    const visit = await openGuard(guard);
    const { page } = visit;
    await field(page, "pickups").selectOption({ label: "HSS: humbucker at the bridge" });
    await expect.poll(() => changed(page)).toMatch(/^Changed: .*\d wires? (moved|laid)/);
    expect(await guardOn(page)).toEqual(
      presetWith(guard, (await guardOn(page)).parts.bridge as object, ["bridge.slug.finish", "lever.A1"]),
    );
    await page.locator(".found .findings, .found .all-well").first().waitFor();
    await expect.poll(() => wrong(page)).toBe(0);
    await showTab(page, "Solder");
    await page.locator("#panel-solder").getByText("Joint 1.").waitFor();
    await undo(page);
    expect(JSON.stringify(await guardOn(page))).toBe(JSON.stringify(guard));
    expectQuiet(visit);
  });

  /** The guard that is expected has every part of the old one but the bridge, and a wire where it must be. */
  function presetWith(guard: object, bridge: object, [from, to]: readonly [string, string]): unknown {
    const { parts } = guard as Guard;
    return expect.objectContaining({
      parts: { ...parts, bridge },
      wires: expect.arrayContaining([expect.objectContaining({ from, to })]),
    });
  }

  it("reaches HSS with the lower knob on the bridge, split by it, 22 nF and a treble bleed in under twelve actions", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    let actions = 0;
    const act = async (action: () => Promise<unknown>) => {
      actions += 1;
      await action();
      await planned(page);
      await page.locator(".plan-group").first().waitFor({ state: "attached" });
      await expect.poll(() => page.locator("#panel-plan [data-plan]").count()).toBeGreaterThan(20);
    };
    actions += 1;
    await openScenario(page, /22|tone cap/i);
    await act(() => showTab(page, "Plan"));
    await act(() => field(page, "pickups").selectOption({ label: "HSS: humbucker at the bridge" }));
    await act(() => field(page, "tone2.pickups.bridge").check());
    for (const pickup of ["middle", "neck"])
      if (await field(page, `tone2.pickups.${pickup}`).isChecked())
        await act(() => field(page, `tone2.pickups.${pickup}`).uncheck());
    await act(async () => {
      await field(page, "tone2.cap").fill("22n");
      await field(page, "tone2.cap").press("Enter");
    });
    await act(() => field(page, "split.bridge").selectOption({ label: "push-pull on the lower tone" }));
    await act(() => field(page, "trebleBleed").selectOption({ label: "a cap with a resistor beside it" }));
    expect(actions).toBeLessThan(12);
    const { parts } = await guardOn(page);
    expect(parts).toMatchObject({
      bridge: { type: "humbucker-medium" },
      tone2: { drives: "dpdt" },
      cap2: { capacitance: "22n" },
      bleed: { capacitance: "680p" },
      bleedResistor: { resistance: "150k" },
    });
    expect(await field(page, "tone2.pickups.bridge").isChecked()).toBe(true);
    await expect.poll(() => wrong(page)).toBe(0);
    expectQuiet(visit);
  });

  thoroughly("keeps to the width of any page, half of one at 200 % zoom included", async () => {
    const { page } = await openGuard(presetGuard("hss-push-pull-split"));
    await page.locator(".plan-group").evaluateAll((all) => {
      for (const each of all) each.setAttribute("open", "");
    });
    const before = page.viewportSize()!;
    for (const width of [360, 390, 720, 768, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over, `${width} px`).toBeLessThanOrEqual(0);
      const cut = await page
        .locator("#panel-plan .field")
        .evaluateAll((all) =>
          all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.textContent),
        );
      expect(cut, `${width} px`).toEqual([]);
    }
    await page.setViewportSize(before);
  });

  it("loses no change to somebody quicker than the answer", async () => {
    const { page } = await openGuard(presetGuard("hss-push-pull-split"));
    await page.locator("#panel-plan").evaluate((panel) => {
      const choices = { trebleBleed: "none", "tone2.cap": "33n" };
      for (const [id, value] of Object.entries(choices)) {
        const field = panel.querySelector<HTMLInputElement>(`[data-plan="${id}"]`)!;
        field.value = value;
        field.dispatchEvent(new Event("change", { bubbles: true }));
      }
    });
    await planned(page);
    const { parts } = await guardOn(page);
    expect(parts).not.toHaveProperty("bleed");
    expect(Object.values(parts)).toContainEqual(expect.objectContaining({ kind: "cap", capacitance: "33n" }));
  });

  thoroughly("greys what does not go together and says why", async () => {
    const { page } = await openGuard(presetGuard("hss-push-pull-split"));
    await field(page, "phase.neck").selectOption({ label: "push-pull on the upper tone" });
    await planned(page);
    const options = field(page, "phase.middle").locator("option");
    const grey = options.filter({ hasText: "push-pull on the upper tone" });
    await expect.poll(() => grey.getAttribute("disabled")).not.toBeNull();
    expect(await grey.textContent()).toMatch(/no: .*two poles/);
    expect(await field(page, "tone2.pickups.bridge").isDisabled()).toBe(true);
    expect(await page.locator(".plan-ticks").nth(1).textContent()).toContain("at least one pickup");
  });

  thoroughly("clears a refusal once the value is right, and tells what a pickup takes with it", async () => {
    const { page } = await openGuard(presetGuard("hss-push-pull-split"));
    const put = async (value: string) => {
      await field(page, "tone1.cap").fill(value);
      await field(page, "tone1.cap").press("Enter");
    };
    const refusal = page.locator("#panel-plan [role=alert]");
    await put("a lot");
    await expect.poll(() => refusal.textContent()).toContain("Not changed");
    await put("223");
    await expect.poll(() => refusal.textContent()).toBe("");
    expect(await field(page, "tone1.cap").inputValue()).toBe("22n");
    await field(page, "pickups.bridge").selectOption("humbucker-vintage");
    await expect
      .poll(() => changed(page))
      .toMatch(/; no longer there: Split the bridge: push-pull on the lower tone\. Undo takes it back\.$/);
  });

  thoroughly("keeps and shows what was done by hand, and asks before a change of plan drops it", async () => {
    const guard = presetGuard("hss-push-pull-split");
    const byHand = {
      ...guard,
      parts: { ...guard.parts, extra: { kind: "resistor", resistance: "1M" } },
      wires: [...guard.wires, ["extra.a", "bridge.slug.start"], ["extra.b", "volume.case"]],
    };
    const visit = await openGuard(byHand);
    const { page } = visit;
    await expect.poll(() => page.locator(".by-hand").textContent()).toContain("extra");
    await field(page, "trebleBleed").selectOption({ label: "none" });
    await planned(page);
    expect((await guardOn(page)).parts).toHaveProperty("extra");
    expect((await guardOn(page)).parts).not.toHaveProperty("bleed");
    await expect.poll(() => field(page, "trebleBleed").inputValue()).toBe("none");
    const before = JSON.stringify(await guardOn(page));
    await field(page, "pickups.bridge").selectOption("single-medium");
    await page.getByText("leaves no room for what was done by hand").waitFor();
    expect(JSON.stringify(await guardOn(page))).toBe(before);
    await page.getByRole("button", { name: "Leave the guard as it is" }).click();
    expect(await field(page, "pickups.bridge").inputValue()).toBe("humbucker-medium");
    await field(page, "pickups.bridge").selectOption("single-medium");
    await page.getByRole("button", { name: "Change the plan and let it go" }).click();
    await expect.poll(async () => (await guardOn(page)).parts.bridge).toMatchObject({ type: "single-medium" });
    await undo(page);
    expect(JSON.stringify(await guardOn(page))).toBe(before);
    expectQuiet(visit);
  });

  thoroughly(
    "recognises a guard under other names, refuses a value it cannot read, and says why a guard is no plan's",
    async () => {
      const renamed = JSON.parse(
        JSON.stringify(presetGuard("one-p90")).replaceAll('"tone', '"t').replaceAll('"volume', '"vol'),
      );
      for (const name of ["t", "vol"]) renamed.parts[name].role = name === "t" ? "tone" : "volume";
      const visit = await openGuard(renamed);
      const { page } = visit;
      expect(await field(page, "layout").inputValue()).toBe("one-pickup");
      await field(page, "volume1.pot").fill("500q");
      await field(page, "volume1.pot").press("Enter");
      await expect.poll(() => page.locator("#panel-plan .fault-text").textContent()).toContain("500q");
      expect(await guardOn(page)).toEqual(renamed);
      await field(page, "volume1.pot").fill("1M");
      await field(page, "volume1.pot").press("Enter");
      await expect.poll(async () => (await guardOn(page)).parts.vol).toMatchObject({ resistance: "1M" });

      await showTab(page, "Wires");
      await page.getByLabel("Wire 1, to").fill("vol.33");
      await page.getByLabel("Wire 1, to").press("Enter");
      await page.locator(".faults button").waitFor();
      await showTab(page, "Plan");
      await page.getByText("no plan can be told").waitFor();
      await undo(page);
      await page.locator(".plan-group").first().waitFor();
      await openScenario(page, /blend/i);
      await showTab(page, "Plan");
      await page.getByText("This guard is wired by no plan.").waitFor();
      expectQuiet(visit);
    },
  );
});
