import { expect, it } from "vitest";
import { writeShelfFile } from "../../../src/shelf/file/shelf-file.ts";
import { buildText } from "../../../src/shelf/packed.ts";
import { BUILDS } from "../../shelf/builds.ts";
import { describeWith } from "../../tools.ts";
import { draftOf, openScenario, openStart, showTab, whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { contentOf, fill, giveFile, guardCalled, guardsUpTo, openShelf, row, savedBy, showCard } from "./shelf-page.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const byName = (name: string) => (guard: { readonly name: string }) => guard.name === name;

describeWith("chromium", "guards carried to a shelf and from it", () => {
  const site = usePage();

  it("come back from a file byte for byte, whichever form their build files have", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    const shelf = await openShelf(page);
    const guards = [
      guardCalled("Plan", { file: JSON.stringify(BUILDS.plan) }),
      guardCalled("Tabs and odd ends", { file: `\t${JSON.stringify(BUILDS.long, null, "\t")}\r\n\r\n` }),
      guardCalled("With faults", { file: buildText({ ...BUILDS.long, wires: [["neck.hot", "nowhere"]] }) }),
      guardCalled("No JSON", { file: "{ not yet", notes: "“quotes”, \u2028 and 🎸" }),
    ];
    await fill(shelf, guards);
    const saved = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(new Map(saved.map((guard) => [guard.id, guard]))).toEqual(new Map(guards.map((guard) => [guard.id, guard])));
    const card = await showCard(shelf, "Tabs and odd ends");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      card.getByRole("button", { name: "Save its build file" }).click(),
    ]);
    expect(await contentOf(download)).toBe(guards[1]!.file);
    await card.getByRole("button", { name: "Back to all guards" }).click();
    await shelf.getByRole("button", { name: "Open No JSON on the bench" }).click();
    await shelf
      .getByRole("alert")
      .getByText(/wrong character/)
      .waitFor();
    expectQuiet(visit);
  });

  it("come from a damaged file as far as it goes, with what is wrong by guard and field", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    const [first, second, third] = guardsUpTo(3);
    const text = writeShelfFile([first!, { ...second!, made: "yesterday" }, third!], AT);
    await giveFile(shelf, "damaged.shelf.json", text.slice(0, text.lastIndexOf('"file"')));
    const taken = shelf.locator(".take-in");
    await taken.getByText("From damaged.shelf.json: 1 guard put on the shelf.").waitFor();
    const faults = await taken.getByRole("alert").textContent();
    expect(faults).toContain("2 guards could not be read and were left out");
    expect(faults).toContain('guard 2, “Guard 2”, made is "yesterday"; expected a day, YYYY-MM-DD');
    expect(faults).toContain("guard 3 breaks off or has a wrong character; expected a whole JSON object");
    expect(await shelf.locator(".shelf-row").count()).toBe(1);
    await giveFile(shelf, "song.json", '{"song":1}');
    await shelf.getByText(/song.json cannot be opened: this is no shelf file/).waitFor();
  });

  it("with other content of a guard that is there are asked about, and nothing is lost", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    const mine = guardsUpTo(3);
    await fill(shelf, mine);
    const theirs = mine.map((guard) => ({ ...guard, notes: "changed elsewhere" }));
    await fill(shelf, theirs);
    const taken = shelf.locator(".take-in");
    await taken.getByText("3 guards are on the shelf with other content").waitFor();
    await taken.getByRole("button", { name: "Take the one that came: Guard 1" }).click();
    await taken.getByText("taken over; what it was stands in its history").waitFor();
    await taken.getByRole("button", { name: "Leave mine: Guard 2" }).click();
    await taken.getByRole("button", { name: "Keep both, of all" }).click();
    await taken.getByText("both kept").waitFor();
    const saved = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(saved).toHaveLength(4);
    expect(saved.find(byName("Guard 1"))).toMatchObject({
      notes: "changed elsewhere",
      history: [{ by: "import", was: { notes: mine[0]!.notes } }],
    });
    expect(saved.find(byName("Guard 2"))).toEqual(mine[1]);
    expect(saved.filter(byName("Guard 3")).map(({ notes }) => notes)).toEqual(
      expect.arrayContaining(["", "changed elsewhere"]),
    );
  });

  it("go by a link, which shows them and asks before any is kept", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    const mine = guardsUpTo(12);
    await fill(shelf, mine);
    await shelf.getByRole("button", { name: "Link to the shelf" }).click();
    await expect.poll(() => shelf.getByLabel("The link").inputValue()).toContain("/s/");
    const { pathname } = new URL(await shelf.getByLabel("The link").inputValue());

    const friend = await site.visit({ path: pathname });
    const offer = friend.page.getByRole("region", { name: "What the link carries" });
    await offer.getByText("This link carries 12 guards. None is kept before you say so").waitFor();
    const theirs = friend.page.getByRole("region", { name: "The shelf" });
    expect(await theirs.locator(".shelf-row").count()).toBe(0);
    await offer.getByRole("checkbox", { name: "Guard 12" }).uncheck();
    await offer.getByRole("button", { name: "Put these on my shelf" }).click();
    await theirs.getByText("11 guards put on the shelf").waitFor();
    expect(new URL(friend.page.url()).pathname).toBe("/");
    const saved = await savedBy(friend.page, theirs.getByRole("button", { name: "Save the shelf as a file" }));
    expect(saved.toSorted((a, b) => (a.changed < b.changed ? -1 : 1))).toEqual(mine.slice(0, 11));
    expectQuiet(friend);
  });

  it("that do not fit into a link are offered as a file, with the reason", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    // Random letters, which cannot be made shorter.
    const letters = () => Array.from({ length: 4000 }, () => String.fromCharCode(97 + Math.random() * 26)).join("");
    await fill(
      shelf,
      guardsUpTo(5).map((guard) => ({ ...guard, notes: letters() })),
    );
    await shelf.getByRole("button", { name: "Link to the shelf" }).click();
    await shelf.getByText(/No link: .*expected at most 12000.* A file carries them, histories included/).waitFor();
    expect(await savedBy(page, shelf.getByRole("button", { name: "Save these 5 guards as a file" }))).toHaveLength(5);
  });

  it("that are deleted come back as they were, and a copy is a guard of its own", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    const [guard] = guardsUpTo(1);
    await fill(shelf, [guard!]);
    await (await showCard(shelf, "Guard 1")).getByRole("button", { name: "Delete" }).click();
    await shelf.getByText("Deleted “Guard 1”").waitFor();
    await expect.poll(() => shelf.locator(".shelf-row").count()).toBe(0);
    await shelf.getByRole("button", { name: "Undo" }).press("Enter");
    await row(shelf, "Guard 1").waitFor();
    expect(await shelf.getByRole("button", { name: "Undo" }).count()).toBe(0);
    const save = shelf.getByRole("button", { name: "Save the shelf as a file" });
    expect(await savedBy(page, save)).toEqual([guard]);
    await (await showCard(shelf, "Guard 1")).getByRole("button", { name: "Duplicate" }).click();
    await shelf.getByText("This is the copy: “Guard 1 (copy)”").waitFor();
    await shelf.getByRole("button", { name: "Back to all guards" }).click();
    const both = await savedBy(page, save);
    expect(both.map(({ file }) => file)).toEqual([guard!.file, guard!.file]);
    expect(new Set(both.map(({ id }) => id)).size).toBe(2);
  });

  it("that are deleted one after the other come back the last one first", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    await fill(shelf, guardsUpTo(3));
    for (const name of ["Guard 1", "Guard 2"]) {
      await (await showCard(shelf, name)).getByRole("button", { name: "Delete" }).click();
      await shelf.getByText(`Deleted “${name}”`).waitFor();
    }
    await shelf.getByRole("button", { name: "Undo" }).click();
    await shelf.getByText("“Guard 2” is back on the shelf. Deleted “Guard 1”").waitFor();
    await shelf.getByRole("button", { name: "Undo" }).click();
    await shelf.getByText("“Guard 1” is back on the shelf.").waitFor();
    await expect.poll(() => shelf.locator(".shelf-row").count()).toBe(3);
  });

  it("in a file that is opened as a build file are offered to the shelf, and the guard on the bench stays", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await openScenario(page, /HSS/);
    await openStart(page);
    const start = page.locator(".start");
    const give = async (text: string) => {
      const file = { name: "mine.shelf.json", mimeType: "application/json", buffer: Buffer.from(text) };
      await start.locator("input[type=file]").setInputFiles(file);
      await start.getByText("mine.shelf.json is a shelf file: guards to be kept").waitFor();
    };
    const text = writeShelfFile(guardsUpTo(3), AT);
    await give(text);
    await start.getByRole("button", { name: "Leave it" }).click();
    await give(text.slice(0, text.lastIndexOf('"file"')));
    await start.getByRole("button", { name: "Open it on the shelf" }).click();
    const shelf = page.getByRole("region", { name: "The shelf" });
    await shelf.getByText("From mine.shelf.json: 2 guards put on the shelf.").waitFor();
    await shelf.getByText("1 guard could not be read and was left out").waitFor();
    await page.getByRole("tab", { name: "Map of sounds" }).click();
    await give(text);
    await start.getByRole("button", { name: "Open it on the shelf" }).click();
    expect(await page.getByRole("tab", { name: "Guards" }).getAttribute("aria-selected")).toBe("true");
    await shelf.getByText("From mine.shelf.json: 1 guard put on the shelf, 2 guards there already.").waitFor();
    expect((await draftOf(page)).source).toMatchObject({ title: "HSS guard, 250 kΩ pots" });
  });

  it("have what was read off the meter, from the table and by hand", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await openScenario(page, /HSS/);
    await showTab(page, "Measure");
    const panel = page.locator("#panel-measure");
    const field = panel.locator(".measured input").first();
    await field.fill("7.9k");
    const what = (await field.getAttribute("aria-label"))!.replace("Measured: ", "");
    await panel.getByRole("button", { name: "Keep these readings on the shelf" }).click();
    await panel.getByText("One reading is kept with “HSS guard, 250 kΩ pots” on the shelf").waitFor();
    const shelf = await openShelf(page);
    const card = await showCard(shelf, "HSS guard, 250 kΩ pots");
    expect(await card.locator(".plain-table tbody").textContent()).toBe(`${what}7.9k`);
    await card.getByLabel("What was measured").fill("bridge, slug coil");
    await card.getByLabel("It read").fill("2.2 H");
    await card.getByLabel("On").fill("2026-03-02");
    await card.getByRole("button", { name: "Add this reading" }).click();
    await card.getByText("bridge, slug coil").waitFor();
    await card.getByRole("button", { name: "Back to all guards" }).click();
    const [guard] = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
    expect(guard!.readings.map(({ date, values }) => [date, values])).toContainEqual([
      "2026-03-02",
      [{ what: "bridge, slug coil", read: "2.2 H" }],
    ]);
  });
});
