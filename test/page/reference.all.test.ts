import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { expectQuiet, usePage } from "./browser.ts";

describeWith("chromium", "the reference at /api/", () => {
  const site = usePage();

  it("lists every call, also on a telephone, without breaking the policy or asking elsewhere", {
    timeout: 120_000,
  }, async () => {
    const visit = await site.visit({ path: "/api/", width: 390 });
    const { page } = visit;
    await page.locator(".opblock").first().waitFor({ timeout: 60_000 });
    const document = await (await fetch(`${site.origin}/api/openapi.json`)).json();
    const calls = Object.entries(document.paths as Record<string, object>).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const listed = await page.locator(".opblock-summary").evaluateAll((rows) =>
      rows.map((row) => {
        const text = (selector: string) => row.querySelector(selector)?.textContent?.replaceAll("\u200b", "").trim();
        return `${text(".opblock-summary-method")} ${text(".opblock-summary-path")}`;
      }),
    );
    expect(listed.toSorted()).toEqual(calls.toSorted());

    await page.getByText("/api/response").first().click();
    await page.getByText('"layout": "lever-5-two-tone"').first().waitFor();
    await page.locator("#limits").getByText("MAX_SETTINGS").waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    expectQuiet(visit);
  });
});
