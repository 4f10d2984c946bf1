import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import type { Guard, GuardLine } from "../../shelf/guard.ts";

/** A guard's drawing in small, made of the build file that has this mark, which begins with the look. */
export interface KeptDrawing {
  readonly id: string;
  readonly fileMark: string;
  readonly svg: string;
}

/** A line with what puts the latest changed first: an index is read from its low end. */
export interface KeptLine extends GuardLine {
  readonly age: number;
}

export function keptLine(line: GuardLine): KeptLine {
  return { ...line, age: -Date.parse(line.changed) };
}

export interface ShelfSchema extends DBSchema {
  guards: { key: string; value: Guard };
  /** Beside the guards, so that a list is there without their files and histories. */
  lines: { key: string; value: KeptLine; indexes: { age: number } };
  /** Can be made anew at any time. */
  drawings: { key: string; value: KeptDrawing };
  /** One record. */
  drawer: { key: string; value: KeptDrawer };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

/** What each version of the database adds to the one before; a step that was ever published stays as it is. */
const STEPS: readonly ((database: ShelfDatabase) => void)[] = [
  (database) => {
    for (const name of ["guards", "drawings"] as const) database.createObjectStore(name, { keyPath: "id" });
    database.createObjectStore("lines", { keyPath: "id" }).createIndex("age", "age");
  },
  (database) => void database.createObjectStore("drawer", { keyPath: "id" }),
];

/** A browser whose storage is out of order may never answer at all. */
const PATIENCE_MS = 8000;

function withinPatience<T>(opening: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("the browser's storage does not answer")), PATIENCE_MS);
    opening.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/** @param lost called once this connection can no longer be used @throws where the browser opens none */
export function openShelfDatabase(lost: () => void): Promise<ShelfDatabase> {
  const opening = openDB<ShelfSchema>("presolder-shelf", STEPS.length, {
    upgrade: (database, oldVersion) => {
      for (const step of STEPS.slice(oldVersion)) step(database);
    },
    // A newer page in another tab waits for this one to let go.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      lost();
    },
    terminated: lost,
  });
  return withinPatience(opening);
}
