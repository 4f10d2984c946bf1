import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { whenReady } from "./actions.ts";
import { usePage } from "./browser.ts";

const MAX_BYTES = 250_000;

describeWith("chromium", "the page's weight", () => {
  const site = usePage();

  it("stays under 250 kB on the wire until a guard is on the bench", async () => {
    const { page } = await site.visit({ path: "/healthz" });
    const session = await page.context().newCDPSession(page);
    await session.send("Network.enable");
    let bytes = 0;
    session.on("Network.loadingFinished", ({ encodedDataLength }) => {
      bytes += encodedDataLength;
    });
    await page.goto(site.origin);
    await whenReady(page);
    expect(bytes).toBeGreaterThan(50_000);
    expect(bytes).toBeLessThan(MAX_BYTES);
  });
});
