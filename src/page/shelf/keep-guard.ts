import { amended } from "../../shelf/amend.ts";
import type { Guard, GuardContent } from "../../shelf/guard.ts";
import { newGuard } from "../../shelf/new-guard.ts";
import { buildText } from "../../shelf/packed.ts";
import type { Bench } from "../start/bench.ts";
import { toSource } from "../start/open-build.ts";
import { keepAs, keptAs } from "../state/kept-as.ts";
import type { BuildSource } from "../state/reading.ts";
import { openShelf } from "./open-shelf.ts";
import { markOfSource, sameOnShelf } from "./same-guard.ts";
import { type Shelf, ShelfFault } from "./shelf.ts";
import { askToLast } from "./storage-room.ts";

const nameOf = (source: BuildSource) => source.title?.trim().slice(0, 200) || "A guard";

/** Whether a kept file is this very guard, in whichever form it was written. */
async function isOf(bench: Bench, file: string, source: BuildSource): Promise<boolean> {
  try {
    const form = await toSource(bench, JSON.parse(file));
    return "source" in form && JSON.stringify(form.source) === JSON.stringify(source);
  } catch {
    return false;
  }
}

/** A guard's name on the shelf follows its title until it is called otherwise there. */
function changesOf(before: Guard, source: BuildSource): Partial<GuardContent> {
  const file = buildText(source);
  try {
    const { title } = JSON.parse(before.file) as BuildSource;
    const followed = before.name === nameOf({ ...source, title: title ?? "" });
    return { file, ...(followed ? { name: nameOf(source) } : {}) };
  } catch {
    return { file };
  }
}

async function keepAgain(bench: Bench, shelf: Shelf, id: string, source: BuildSource): Promise<string | undefined> {
  const before = await shelf.get(id);
  if (!before) return undefined;
  if (await isOf(bench, before.file, source)) return `“${before.name}” is on the shelf already, as it is here.`;
  const changes = changesOf(before, source);
  try {
    const { name } = await shelf.change(id, (guard) => amended(guard, changes, { at: new Date(), by: "change" }));
    return `Kept on the shelf: “${name}”. What it was stands in its history.`;
  } catch (error) {
    if (error instanceof ShelfFault && error.reason === "gone") return undefined;
    throw error;
  }
}

/** The guard on the bench, kept. @returns its id and what to say of it @throws ShelfFault, and Error where it cannot be read */
export async function keepGuard(bench: Bench): Promise<{ readonly id: string; readonly told: string }> {
  const { source, faults, guard } = bench.store.state;
  if (!source || faults.length > 0)
    throw new Error("The guard has faults that must be mended before it can be kept on the shelf.");
  const shelf = await openShelf();
  const known = keptAs(guard);
  const again = known === undefined ? undefined : await keepAgain(bench, shelf, known, source);
  if (known !== undefined && again !== undefined) return { id: known, told: again };
  const there = sameOnShelf(await shelf.list(), markOfSource(source));
  // It came back after the browser was killed, or from a link that was kept before.
  if (there && there.name === nameOf(source)) {
    keepAs(guard, there.id);
    return { id: there.id, told: `“${there.name}” is on the shelf already, as it is here.` };
  }
  const fresh = newGuard({ name: nameOf(source), file: buildText(source) }, new Date());
  await shelf.put([fresh]);
  keepAs(guard, fresh.id);
  void askToLast();
  const lasting = shelf.lasts ? "" : " This browser stores nothing, so it is there until the page is closed.";
  return { id: fresh.id, told: `Kept on the shelf: “${fresh.name}”.${lasting}` };
}
