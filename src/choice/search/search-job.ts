import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { Guard } from "../guard.ts";
import type { FreeSpec } from "./free-parts.ts";
import { type SearchOptions, type SearchResult, search } from "./search.ts";
import type { Wish } from "./wish.ts";

/** A wish as plain data: another build in place of a guard. */
export type WishJob =
  | Exclude<Wish, { kind: "like" }>
  | {
      readonly kind: "like";
      readonly settings: Settings;
      readonly target: { readonly build: Build; readonly settings: Settings };
    };

export interface SearchJob {
  readonly build: Build;
  readonly free: readonly FreeSpec[];
  readonly wish: WishJob;
}

function wishOf(wish: WishJob): Wish {
  if (wish.kind !== "like") return wish;
  const { build, settings } = wish.target;
  return { ...wish, target: { guard: new Guard(build), settings } };
}

/** @throws PresolderError naming the part or lug at fault */
export function runSearch({ build, free, wish }: SearchJob, options: Checkpoint & SearchOptions): SearchResult {
  return search(build, free, wishOf(wish), options);
}
