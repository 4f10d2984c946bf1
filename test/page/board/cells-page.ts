import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";
import { newGuard } from "../../../src/shelf/new-guard.ts";
import { buildText } from "../../../src/shelf/packed.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { showTab, whenOpen } from "../actions.ts";
import { fill, openShelf } from "../shelf/shelf-page.ts";

const guard = (minute: number, name: string, more: Parameters<typeof threeSingles>[0] = {}) =>
  newGuard(
    { name, file: buildText({ ...threeSingles(more), title: name } as never) },
    new Date(Date.UTC(2026, 2, 1, 18, minute)),
  );

/** Two guards alike and one with a long cable between them; the shelf has the latest first. */
const GUARDS = [
  guard(30, "Usual"),
  guard(20, "Long cable", { rest: { cable: { length: "10m", capacitance: "150pF/m" } } }),
  guard(10, "Usual again"),
];

/** The shelf with those guards and one of its tabs open. */
export async function openCells(page: Page, tab: string): Promise<Locator> {
  await whenOpen(page);
  const shelf = await openShelf(page);
  await fill(shelf, GUARDS);
  await shelf.getByText("3 guards", { exact: true }).waitFor();
  await showTab(page, tab);
  return shelf;
}

/** Three cells of two guards on the board. */
export async function putThree(shelf: Locator): Promise<Locator> {
  const put = shelf.getByRole("button", { name: "Put on the board" });
  await shelf.getByLabel("Guard", { exact: true }).selectOption({ label: "Usual" });
  await put.click();
  await shelf.getByLabel("Lever", { exact: true }).selectOption("5");
  await put.click();
  await shelf.getByLabel("Guard", { exact: true }).selectOption({ label: "Long cable" });
  await put.click();
  const cells = shelf.locator(".board-cell");
  await expect.poll(() => cells.count()).toBe(3);
  return cells;
}
