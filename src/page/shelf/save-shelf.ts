import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import { writeShelfFile } from "../../shelf/file/shelf-file.ts";
import type { Guard } from "../../shelf/guard.ts";
import { dayOf } from "../../shelf/new-guard.ts";
import { fileStem, saveFile } from "../server/save-file.ts";

/** Hands the person a shelf file of some guards. @param drawer where it is the whole shelf's */
export function saveGuards(guards: readonly Guard[], drawer?: KeptDrawer): void {
  const at = new Date();
  const [only] = guards;
  const stem = guards.length === 1 && only ? fileStem(only.name) : `${guards.length}-guards`;
  const text = writeShelfFile(guards, at, drawer);
  saveFile(`${stem}-${dayOf(at)}.shelf.json`, new Blob([text], { type: "application/json" }));
}

/** Hands the person a guard's build file, byte for byte as it is kept. */
export function saveBuildFile({ name, file }: Guard): void {
  saveFile(`${fileStem(name)}.presolder.json`, new Blob([file], { type: "application/json" }));
}
