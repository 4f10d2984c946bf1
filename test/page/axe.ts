import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Finding {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** Findings of axe-core within a part of the page that keep somebody from using it. */
export async function seriousFindings(page: Page, within: string): Promise<string[]> {
  // Of what passes, only the rules are counted.
  const run = `axe.run(${JSON.stringify(within)}, { resultTypes: ["violations"] })`;
  const { passes, violations } = (await page.evaluate(run)) as { passes: Finding[]; violations: Finding[] };
  expect(passes.length, `rules that axe could apply to ${within}`).toBeGreaterThan(5);
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
}

/** Axe has to run in the page; it is put there by the debugger, which the content security policy does not bind. */
export async function bringAxe(page: Page): Promise<void> {
  await page.evaluate(AXE);
}
