import { text } from "node:stream/consumers";
import type { Download, Locator, Page } from "playwright-core";
import { readShelfFile } from "../../../src/shelf/file/read-shelf-file.ts";
import { writeShelfFile } from "../../../src/shelf/file/shelf-file.ts";
import { GUARD_STATES, type Guard } from "../../../src/shelf/guard.ts";
import { newGuard } from "../../../src/shelf/new-guard.ts";
import { buildText } from "../../../src/shelf/packed.ts";
import { BUILDS } from "../../shelf/builds.ts";
import { openStart, settled } from "../actions.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");

/** A guard of the one-knob build, with a name and whatever else of its own. */
export function guardCalled(name: string, more: Partial<Guard> = {}): Guard {
  return { ...newGuard({ name, file: buildText({ ...BUILDS.long, title: name }) }, AT), ...more };
}

/** As many guards, all different, the last named changed last. */
export function guardsUpTo(count: number): Guard[] {
  return Array.from({ length: count }, (_, index) =>
    guardCalled(`Guard ${index + 1}`, {
      guitar: `guitar ${index % 20}`,
      state: GUARD_STATES[index % GUARD_STATES.length]!,
      notes: index % 50 === 7 ? "buzzes when the lever is touched" : "",
      changed: new Date(AT.getTime() + index * 1000).toISOString(),
    }),
  );
}

export async function openShelf(page: Page): Promise<Locator> {
  await openStart(page);
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("region", { name: "The shelf" });
  await shelf.getByLabel("Find a guard").waitFor();
  return shelf;
}

/** Presses "Keep on the shelf". @returns what the page says */
export async function keep(page: Page): Promise<string> {
  await openStart(page);
  const before = await page.locator(".notice").textContent();
  await page.getByRole("button", { name: "Keep on the shelf" }).click();
  const told = page.locator(".notice", { hasText: /shelf/ });
  await told.waitFor();
  await page.waitForFunction((text) => document.querySelector(".notice")!.textContent !== text, before);
  return (await told.textContent())!;
}

export async function giveFile(shelf: Locator, name: string, content: string): Promise<void> {
  const file = { name, mimeType: "application/json", buffer: Buffer.from(content) };
  // What an earlier file came to is no answer to this one.
  for (const button of await shelf.getByRole("button", { name: /^Close( this)?$/ }).all()) await button.click();
  await shelf.locator("input[type=file]").setInputFiles(file);
  await shelf.locator(".take-in [role=status], .shelf-fault p").first().waitFor();
}

/** Puts guards on the shelf by a file. */
export async function fill(shelf: Locator, guards: readonly Guard[]): Promise<void> {
  await giveFile(shelf, "mine.shelf.json", writeShelfFile(guards, AT));
}

export async function contentOf(download: Download): Promise<string> {
  return text(await download.createReadStream());
}

/** The guards of the file that a button offers. */
export async function savedBy(page: Page, button: Locator): Promise<readonly Guard[]> {
  const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
  const { guards, faults } = readShelfFile(await contentOf(download));
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return guards;
}

export const row = (shelf: Locator, name: string) =>
  shelf.locator(".shelf-row", { has: shelf.page().getByRole("button", { name, exact: true }) });

export async function showCard(shelf: Locator, name: string): Promise<Locator> {
  await shelf.getByRole("button", { name, exact: true }).click();
  const card = shelf.getByRole("region", { name: "One guard" });
  await card.waitFor();
  return card;
}

/** Opens the guard from its row, and waits for it on the bench. */
export async function openOnBench(page: Page, shelf: Locator, name: string): Promise<void> {
  await shelf.getByRole("button", { name: `Open ${name} on the bench` }).click();
  await page.locator(".notice", { hasText: `On the bench: “${name}”` }).waitFor();
  await settled(page);
}
