import type { Build } from "../schema.ts";
import type { PartMatch } from "./match-parts.ts";

export interface PartChanges {
  /** Parts that stay, by their names as found and as wanted. */
  readonly stay: readonly { readonly from: string; readonly to: string }[];
  /** Parts of the guard as wanted that come in, with the part that goes out for each; null where it is one more. */
  readonly comeIn: readonly { readonly name: string; readonly replaces: string | null }[];
  /** Parts of the guard as found that go out, with what comes in for each; null where it is one less. */
  readonly goOut: readonly { readonly name: string; readonly replacedBy: string | null }[];
}

export function partChanges(from: Build, to: Build, { stays, replaces }: PartMatch): PartChanges {
  const staying = new Set(stays.values());
  const replacement = new Map([...replaces].map(([name, old]) => [old, name]));
  return {
    stay: [...stays].map(([name, old]) => ({ from: old, to: name })),
    comeIn: Object.keys(to.parts)
      .filter((name) => !stays.has(name))
      .map((name) => ({ name, replaces: replaces.get(name) ?? null })),
    goOut: Object.keys(from.parts)
      .filter((name) => !staying.has(name))
      .map((name) => ({ name, replacedBy: replacement.get(name) ?? null })),
  };
}
