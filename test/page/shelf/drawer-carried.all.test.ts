import { expect, it } from "vitest";
import type { KeptDrawer } from "../../../src/drawer/kept-drawer.ts";
import { writeShelfFile } from "../../../src/shelf/file/shelf-file.ts";
import { describeWith } from "../../tools.ts";
import { whenReady } from "../actions.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { contentOf, giveFile, guardsUpTo, openShelf } from "./shelf-page.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
// The shelf has the latest first.
const GUARDS = guardsUpTo(3).reverse();
const DRAWER = {
  id: "drawer",
  currency: "coins",
  items: [
    { id: "a1", part: { kind: "cap", capacitance: "22n" }, count: 2, measured: ["21.3n"], price: 0.5 },
    { id: "a2", part: { kind: "pot", resistance: "250k", taper: "audio" }, count: 1 },
  ],
  kits: [{ id: "b1", name: "wiring kit", count: 1, content: [{ part: { kind: "jack" }, count: 1 }] }],
  wires: [{ id: "c1", kind: "cloth", length: "2m" }],
  counted: { [GUARDS[0]!.id]: true },
} as unknown as KeptDrawer;
const FILE = writeShelfFile(GUARDS, AT, DRAWER);

describeWith("chromium", "a drawer carried with the shelf", () => {
  const site = usePage();

  it("comes and goes byte for byte, asks where there is one, and is brought back", async () => {
    const visit = await site.visit();
    const { page } = visit;
    await whenReady(page);
    const shelf = await openShelf(page);
    await giveFile(shelf, "mine.shelf.json", FILE);
    await shelf.getByText("Put into the drawer: 2 sorts of part, 1 kit, 1 reel.").waitFor();
    const saved = async ({ name } = { name: "Save the shelf as a file" }) => {
      const button = shelf.getByRole("button", { name });
      const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
      return (await contentOf(download)).replace(/"saved":"[^"]*"/, `"saved":"${AT.toISOString()}"`);
    };
    expect(await saved()).toBe(FILE);

    const wire = { id: "c2", kind: "plastic", length: "1m" };
    const other = { ...DRAWER, wires: [wire] } as unknown as KeptDrawer;
    await giveFile(shelf, "other.shelf.json", writeShelfFile(GUARDS, AT, other));
    await shelf.getByRole("button", { name: "Add to mine what it has besides" }).click();
    await shelf.getByText("What it has besides is in your drawer.").waitFor();
    const both = { ...DRAWER, wires: [...DRAWER.wires, wire] } as unknown as KeptDrawer;
    expect(await saved()).toBe(writeShelfFile(GUARDS, AT, both));
    await shelf.getByRole("button", { name: "Bring back the drawer before" }).click();
    await shelf.getByText("The drawer is as it was before.").waitFor();
    expect(await saved()).toBe(FILE);

    // Some guards take it with them where that is ticked, the whole shelf of itself.
    const withDrawer = shelf.getByRole("checkbox", { name: "with the drawer" });
    await shelf.getByRole("checkbox", { name: `Select ${GUARDS[0]!.name}` }).check();
    const one = { name: "Save the 1 selected as a file" };
    expect(await withDrawer.isChecked()).toBe(false);
    expect(await saved(one)).toBe(writeShelfFile(GUARDS.slice(0, 1), AT));
    await withDrawer.check();
    expect(await saved(one)).toBe(writeShelfFile(GUARDS.slice(0, 1), AT, DRAWER));
    await shelf.getByRole("button", { name: "Select none" }).click();
    expect(await withDrawer.isChecked()).toBe(true);
    await withDrawer.uncheck();
    expect(await saved()).toBe(writeShelfFile(GUARDS, AT));
    await withDrawer.check();

    const wrong = { ...DRAWER, items: [{ id: "x", part: { kind: "cap", capacitance: "much" } }] };
    await giveFile(shelf, "wrong.shelf.json", writeShelfFile(GUARDS, AT, wrong as unknown as KeptDrawer));
    await shelf.getByText(/The drawer in it was left out: .*items\.0\.part\.capacitance/).waitFor();
    expect(await saved()).toBe(FILE);
    expectQuiet(visit);
  });
});
