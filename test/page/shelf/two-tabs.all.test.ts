import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { showTab, whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { fill, guardCalled, keep, openOnBench, openShelf, row, savedBy, showCard } from "./shelf-page.ts";

describeWith("chromium", "the shelf in two tabs", () => {
  const site = usePage();

  async function twoTabs() {
    const visit = await site.visit({ ownWindow: true });
    const { page: one, context } = visit;
    await whenReady(one);
    const here = await openShelf(one);
    await fill(here, [guardCalled("Guard A"), guardCalled("Guard B")]);
    const two = await context.newPage();
    await two.goto(site.origin);
    await whenReady(two);
    return { visit, one, two, here, there: await openShelf(two) };
  }

  it("shows in each what the other does", async () => {
    const { visit, one, here, there } = await twoTabs();
    const card = await showCard(here, "Guard A");
    const other = await showCard(there, "Guard A");
    await other.getByLabel("Guitar").fill("the blue one");
    await expect.poll(() => card.getByLabel("Guitar").inputValue()).toBe("the blue one");

    await other.getByLabel("Notes").fill("from the second tab");
    await other.getByLabel("Notes").press("Tab");
    await other.getByRole("button", { name: "Back to all guards" }).click();
    await card.getByLabel("State").selectOption("wired");
    await row(there, "Guard A").getByText("wired").waitFor();

    await row(there, "Guard B").getByRole("checkbox").check();
    await there.getByRole("button", { name: "Delete the 1 selected" }).click();
    await card.getByRole("button", { name: "Back to all guards" }).click();
    await expect.poll(() => here.locator(".shelf-row").count()).toBe(1);
    await there.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => here.locator(".shelf-row").count()).toBe(2);
    const saved = await savedBy(one, here.getByRole("button", { name: "Save the shelf as a file" }));
    expect(saved.find(({ name }) => name === "Guard A")).toMatchObject({
      guitar: "the blue one",
      state: "wired",
      notes: "from the second tab",
    });
    expectQuiet(visit);
  });

  it("keeps both wirings where the same guard is kept from two benches", async () => {
    const { one, two, here, there } = await twoTabs();
    await openOnBench(one, here, "Guard A");
    await openOnBench(two, there, "Guard A");
    for (const [page, value] of [
      [one, "100n"],
      [two, "10n"],
    ] as const) {
      await showTab(page, "Parts");
      const cap = page.locator('[data-path="parts.cap.capacitance"]');
      await cap.fill(value);
      await cap.press("Enter");
      await keep(page);
    }
    const shelf = await openShelf(one);
    const saved = await savedBy(one, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    const guard = saved.find(({ name }) => name === "Guard A")!;
    const capIn = (file: string) => JSON.parse(file).parts.cap.capacitance;
    expect([guard.file, ...guard.history.map(({ was }) => was.file!)].map(capIn)).toEqual(["10n", "100n", "0.047 uF"]);
  });

  it("brings back with its change a guard that was deleted in the other, which undoing the deletion there leaves", async () => {
    const { one, here, there } = await twoTabs();
    const card = await showCard(here, "Guard A");
    await row(there, "Guard A").getByRole("checkbox").check();
    await there.getByRole("button", { name: "Delete the 1 selected" }).click();
    await here.getByText("This guard was deleted, perhaps in another tab").waitFor();
    await card.getByLabel("Notes").fill("not to be lost");
    await row(there, "Guard A").waitFor();
    await here.getByText("This guard was deleted, perhaps in another tab").waitFor({ state: "detached" });
    await there.getByRole("button", { name: "Undo" }).click();
    await there.getByText("“Guard A” is back on the shelf").waitFor();
    await card.getByRole("button", { name: "Back to all guards" }).click();
    const saved = await savedBy(one, here.getByRole("button", { name: "Save the shelf as a file" }));
    expect(saved.find(({ name }) => name === "Guard A")).toMatchObject({ notes: "not to be lost" });
    expect(saved).toHaveLength(2);
  });

  it("puts what was typed over in another tab into the history", async () => {
    const { one, here, there } = await twoTabs();
    const card = await showCard(here, "Guard A");
    const other = await showCard(there, "Guard A");
    const notes = card.getByLabel("Notes");
    // As somebody types without a pause, so that nothing is written yet.
    await notes.evaluate((field) => {
      const area = field as HTMLTextAreaElement;
      const typing = setInterval(() => {
        area.value += "a";
        area.dispatchEvent(new Event("input", { bubbles: true }));
      }, 50);
      document.addEventListener("stop-typing", () => clearInterval(typing));
    });
    await other.getByLabel("Notes").fill("from the second tab");
    await other.getByLabel("Notes").press("Tab");
    await one.waitForTimeout(600);
    await one.evaluate(() => document.dispatchEvent(new Event("stop-typing")));
    await card.getByText("History (1)").waitFor();
    await card.getByRole("button", { name: "Back to all guards" }).click();
    const saved = await savedBy(one, here.getByRole("button", { name: "Save the shelf as a file" }));
    const guard = saved.find(({ name }) => name === "Guard A")!;
    expect(guard.notes).toMatch(/^a+$/);
    expect(guard.history).toMatchObject([{ by: "another tab", was: { notes: "from the second tab" } }]);
  });
});
