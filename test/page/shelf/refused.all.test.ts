import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { openScenario, whenReady } from "../actions.ts";
import { usePage } from "../browser.ts";
import { fill, guardCalled, guardsUpTo, keep, openShelf, row, savedBy, showCard } from "./shelf-page.ts";

/** Each runs in the page before its own scripts. */
const REFUSALS: Readonly<Record<string, () => void>> = {
  "throws at once": () => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("The operation is insecure.", "SecurityError");
    };
  },
  "fails to open": () => {
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = function (this: IDBFactory, name: string) {
      // A version below any that is there.
      const request = open.call(this, name, 9);
      request.addEventListener("success", (event) => {
        event.stopImmediatePropagation();
        request.result.close();
        Object.defineProperty(request, "error", { value: new DOMException("Internal error.", "UnknownError") });
        request.dispatchEvent(new Event("error"));
      });
      return request;
    };
  },
  // Waits for the deletion before it, which waits for a connection that nobody closes.
  "never answers": () => {
    const request = indexedDB.open("presolder-shelf", 1);
    request.onsuccess = () => {
      Object.assign(globalThis, { heldForever: request.result });
      indexedDB.deleteDatabase("presolder-shelf");
    };
  },
  "is not there at all": () => {
    Object.defineProperty(globalThis, "indexedDB", { value: undefined });
  },
};

/** Runs in the page: from now on nothing more goes into its database. */
function fillUp(): void {
  IDBObjectStore.prototype.put = () => {
    throw new DOMException("No room.", "QuotaExceededError");
  };
}

async function keepRefused(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Keep on the shelf" }).click();
  await page.locator(".shelf-fault").getByText("no room left").waitFor();
}

describeWith("chromium", "a browser that will not store", () => {
  const site = usePage();

  it.each(Object.keys(REFUSALS))(
    "because its database %s keeps the shelf for the visit, says so, and offers a file",
    async (how) => {
      const { page } = await site.visit({ before: async (blank) => void (await blank.addInitScript(REFUSALS[how]!)) });
      await whenReady(page);
      expect(await keep(page)).toContain("This browser stores nothing, so it is there until the page is closed");
      const shelf = await openShelf(page);
      await shelf.getByRole("alert").getByText("stores nothing for this page").waitFor();
      expect(await shelf.locator(".shelf-row").count()).toBe(1);
      const card = await showCard(shelf, (await shelf.locator(".shelf-name").textContent())!);
      await card.getByLabel("Notes").fill("kept for now");
      await card.getByRole("button", { name: "Back to all guards" }).click();
      const [guard] = await savedBy(page, shelf.getByRole("button", { name: "Save the shelf as a file" }));
      expect(guard!.notes).toBe("kept for now");
    },
  );

  it("whose storage is full keeps what is there, says so, and offers a file of what it could not keep", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    const shelf = await openShelf(page);
    await fill(shelf, [guardCalled("Here before")]);
    await page.evaluate(fillUp);
    await openScenario(page, /HSS/);
    await keepRefused(page);
    const [unkept] = await savedBy(page, page.getByRole("button", { name: "Save this guard as a file" }));
    expect(unkept!.name).toBe("HSS guard, 250 kΩ pots");
    expect(JSON.parse(unkept!.file)).toMatchObject({ presolder: 1, title: unkept!.name });

    const card = await showCard(shelf, "Here before");
    await card.getByLabel("Notes").fill("does not fit");
    await shelf.getByText("no room left").waitFor();
    const [noted] = await savedBy(page, shelf.getByRole("button", { name: "Save this guard as a file" }));
    expect(noted!.notes).toBe("does not fit");

    await page.reload();
    await whenReady(page);
    const again = await openShelf(page);
    const [kept] = await savedBy(page, again.getByRole("button", { name: "Save the shelf as a file" }));
    expect(kept).toEqual({ ...guardCalled("Here before"), id: kept!.id });
  });

  it("whose real quota is used up takes none of a file's guards rather than some, and goes on once there is room", async () => {
    const { page, context } = await site.visit({ ownWindow: true });
    await whenReady(page);
    const session = await context.newCDPSession(page);
    // Before the database is first opened, since the browser remembers for a while how much room there was.
    await session.send("Storage.overrideQuotaForOrigin", { origin: site.origin, quotaSize: 400_000 });
    const shelf = await openShelf(page);
    await fill(shelf, [guardCalled("Here before")]);
    const many = guardsUpTo(40).map((guard) => ({ ...guard, notes: "x".repeat(9000) }));
    await fill(shelf, many);
    await shelf.getByText("no room left").waitFor();
    const unkept = await savedBy(page, shelf.getByRole("button", { name: "Save these 40 guards as a file" }));
    expect(unkept).toEqual(many);
    expect(await shelf.locator(".shelf-row").count()).toBe(1);
    await session.send("Storage.overrideQuotaForOrigin", { origin: site.origin });
    await fill(shelf, many);
    await row(shelf, "Guard 40").waitFor();
  });
});
