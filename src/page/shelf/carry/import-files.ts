import { fromDrawerFile, isDrawerFile } from "../../../drawer/drawer-file.ts";
import { keptFrom } from "../../../drawer/kept-drawer.ts";
import { MAX_FILE_CHARS } from "../../../shelf/bounds.ts";
import { readShelfFile, ShelfFileError, type ShelfRead } from "../../../shelf/file/read-shelf-file.ts";
import { newGuard, newId } from "../../../shelf/new-guard.ts";

/** A thousand guards with full histories stay under half of it. */
const MAX_SHELF_BYTES = 256 << 20;

function stemOf(name: string): string {
  return name.replace(/(\.presolder)?\.json$/i, "").slice(0, 200) || "A guard";
}

/** A build file as a guard of its own, by its title; nothing where it is none. */
function fromBuildFile(name: string, text: string): ShelfRead | undefined {
  try {
    const build = JSON.parse(text) as { presolder?: unknown; title?: unknown } | null;
    if (build?.presolder !== 1 || text.length > MAX_FILE_CHARS) return undefined;
    const title = typeof build.title === "string" && build.title.trim() !== "" ? build.title.trim() : stemOf(name);
    return { guards: [newGuard({ name: title.slice(0, 200), file: text }, new Date())], faults: [] };
  } catch {
    return undefined;
  }
}

/** The guards in a file: a shelf's, or one guard's build file; or a drawer's parts without guards. @throws Error naming the file where it is neither */
export async function guardsInFile(file: File): Promise<ShelfRead> {
  if (file.size > MAX_SHELF_BYTES)
    throw new Error(
      `${file.name} has ${Math.round(file.size / 1e6)} MB; expected at most ${MAX_SHELF_BYTES >> 20} MB.`,
    );
  const text = await file.text();
  const build = fromBuildFile(file.name, text);
  if (build) return build;
  if (isDrawerFile(text)) return { guards: [], faults: [], drawer: keptFrom(fromDrawerFile(text), newId) };
  try {
    return readShelfFile(text);
  } catch (error) {
    if (!(error instanceof ShelfFileError)) throw error;
    throw new Error(`${file.name} cannot be opened: ${error.message}.`);
  }
}
