import { expandBuild } from "../../build-file/expand.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import { PresolderError } from "../../errors.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { type BuildSource, type Reading, readSource } from "../state/reading.ts";

/** A build file has parts and wires; one with faults in them may still be opened and mended on the page. */
function isLongForm(input: unknown): input is BuildSource {
  if (typeof input !== "object" || input === null) return false;
  const { presolder, parts, wires } = input as Record<string, unknown>;
  const named = typeof parts === "object" && parts !== null && Object.values(parts).every(isPart);
  return presolder === 1 && named && Array.isArray(wires) && wires.every(isWire);
}

function isPart(part: unknown): boolean {
  return typeof part === "object" && part !== null && typeof (part as { kind?: unknown }).kind === "string";
}

function isWire(wire: unknown): boolean {
  if (typeof wire !== "object" || wire === null) return false;
  const ends = Array.isArray(wire) ? wire : [(wire as Record<string, unknown>).from, (wire as { to?: unknown }).to];
  return ends.length === 2 && ends.every((lug) => typeof lug === "string");
}

/** The long form of a build file, quantities as written. @throws PresolderError where it is no build file. */
export function toSource(input: unknown): BuildSource {
  return isLongForm(input) ? input : (expandBuild(input) as BuildSource);
}

/** A build to compare with, or undefined where it cannot be read. */
export function toReading(input: unknown): Reading | undefined {
  const result = readSource(toSource(input));
  return "reading" in result ? result.reading : undefined;
}

/** Puts a build file on the bench, whatever form it has; what is no build file is refused in the status line. */
export function openBuild(store: AppStore, editor: Editor, input: unknown, settings: RawSettings = {}): boolean {
  try {
    editor.open(toSource(input), settings);
    store.set({ notice: "", startedFrom: "" });
    return true;
  } catch (error) {
    if (!(error instanceof PresolderError)) throw error;
    store.set({ notice: error.message });
    return false;
  }
}
