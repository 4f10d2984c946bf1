import type { Guard } from "./guard.ts";

/** A guard as a link carries it: without its history, and its build file as JSON where that brings back every byte. */
export interface PackedGuard extends Omit<Guard, "file" | "history"> {
  readonly build?: unknown;
  readonly file?: string;
}

/** How this page writes a build file. */
export function buildText(build: unknown): string {
  return `${JSON.stringify(build, null, 2)}\n`;
}

function parsed(file: string): { readonly build: unknown } | undefined {
  try {
    return { build: JSON.parse(file) as unknown };
  } catch {
    return undefined;
  }
}

export function packed({ history: _, file, ...rest }: Guard): PackedGuard {
  const content = parsed(file);
  return content && buildText(content.build) === file ? { ...rest, ...content } : { ...rest, file };
}

/** What a link carried as an entry of a shelf file, to be checked as one. */
export function unpacked(value: unknown): unknown {
  if (typeof value !== "object" || value === null || !("build" in value)) return { history: [], ...(value as object) };
  const { build, ...rest } = value;
  return { ...rest, file: buildText(build), history: [] };
}
