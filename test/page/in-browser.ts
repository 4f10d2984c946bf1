import { build } from "esbuild";
import type { Page } from "playwright-core";

/** Brings modules of the page into a browser page as `globalThis.modules`. @param at where they take themselves to lie */
export async function bringModules(page: Page, exportsOf: string, at = "about:blank"): Promise<void> {
  const { outputFiles } = await build({
    stdin: { contents: exportsOf, resolveDir: new URL("../../src/page", import.meta.url).pathname, loader: "ts" },
    bundle: true,
    write: false,
    format: "iife",
    globalName: "modules",
    target: "es2022",
    define: { "import.meta.url": JSON.stringify(at) },
  });
  await page.evaluate(`${outputFiles[0]!.text}; globalThis.modules = modules;`);
}
