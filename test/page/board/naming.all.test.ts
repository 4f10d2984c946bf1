import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { usePage } from "../browser.ts";
import { openCells, putThree } from "./cells-page.ts";

describeWith("chromium", "naming cells of the board blind", () => {
  const site = usePage();

  it("tells nothing on the way, ends when the answers say enough, and says what they come to", async () => {
    const { page } = await site.visit({
      before: async (blank) => {
        await blank.addInitScript(() => {
          // The lot falls on the second of three, every time.
          crypto.getRandomValues = ((array: Uint8Array) => array.fill(1)) as never;
        });
      },
    });
    const shelf = await openCells(page, "Listening board");
    await putThree(shelf);
    await shelf.getByText("Blind: name which is playing").click();
    await shelf.getByRole("button", { name: "Begin the blind test" }).click();
    const panel = shelf.locator(".blind");
    await panel.getByText("Trial 1: which one is X?").waitFor();
    await panel.getByRole("button", { name: "Play X" }).click();
    // ln 20 over ln((2/3)/(1/3)) is 4.3: five right ones in a row are enough.
    for (let trial = 0; trial < 5; trial++) {
      expect(await panel.textContent()).not.toContain("right");
      await panel.getByRole("button", { name: /^X is 2/ }).click();
    }
    await panel.getByText("5 of 5 right, 3 sounds to choose from.").waitFor();
    expect(await panel.textContent()).toContain("You can tell them apart, some of them at least");
  });
});
