import type { RawSettings } from "../../build-file/settings.ts";
import type { LongForm } from "../engine/source-reader.ts";
import type { BuildSource, Reading } from "../state/reading.ts";
import type { Bench } from "./bench.ts";

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

/** The long form of a build file, quantities as written, or why it is no build file. */
export async function toSource({ engine }: Pick<Bench, "engine">, input: unknown): Promise<LongForm> {
  return isLongForm(input) ? { source: input } : engine.longFormOf(input);
}

/** A build to compare with, or undefined where it cannot be read. */
export async function toReading(bench: Pick<Bench, "engine">, input: unknown): Promise<Reading | undefined> {
  const form = await toSource(bench, input);
  if ("message" in form) return undefined;
  const result = await bench.engine.read(form.source);
  return "reading" in result ? result.reading : undefined;
}

/** Puts a build file on the bench, whatever form it has; what is no build file is refused in the status line. @param guard what is to stand for it */
export async function openBuild(
  bench: Bench,
  input: unknown,
  settings: RawSettings = {},
  guard: object = {},
): Promise<boolean> {
  const { store, editor } = bench;
  const form = await toSource(bench, input);
  if ("message" in form) {
    store.set({ notice: form.message });
    return false;
  }
  const opened = editor.open(form.source, settings, undefined, guard);
  store.set({ notice: "", startedFrom: "" });
  await opened;
  return true;
}
