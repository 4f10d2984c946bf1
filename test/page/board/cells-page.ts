import type { Locator, Page } from "playwright-core";
import { newGuard } from "../../../src/shelf/new-guard.ts";
import { buildText } from "../../../src/shelf/packed.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { showTab, whenOpen } from "../actions.ts";
import { fill, openShelf } from "../shelf/shelf-page.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const guard = (name: string, more: Parameters<typeof threeSingles>[0] = {}) =>
  newGuard({ name, file: buildText({ ...threeSingles(more), title: name } as never) }, AT);

/** Two guards alike and one with a long cable between them. */
const GUARDS = [
  guard("Usual"),
  guard("Long cable", { rest: { cable: { length: "10m", capacitance: "150pF/m" } } }),
  guard("Usual again"),
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
