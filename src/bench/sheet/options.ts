import { DEFAULT_IRON, type Iron } from "./heat/iron.ts";
import { type Allowances, DEFAULT_ALLOWANCES } from "./wire/allowances.ts";
import type { Reel } from "./wire/reels.ts";
import { DEFAULT_KINDS, type KindsWanted } from "./wire/wire-kinds.ts";

export interface SheetOptions {
  readonly allowances: Allowances;
  /** None: two colours that every kit has. */
  readonly reels: readonly Reel[];
  readonly kinds: KindsWanted;
  /** At most so many ends a joint, at least 3. */
  readonly maxEnds: number;
  readonly iron: Iron;
}

export const DEFAULT_SHEET_OPTIONS: SheetOptions = {
  allowances: DEFAULT_ALLOWANCES,
  reels: [],
  kinds: DEFAULT_KINDS,
  maxEnds: 4,
  iron: DEFAULT_IRON,
};

/** From the least to the most that each figure may be: metres, °C, watts, ends. */
export const SHEET_BOUNDS = {
  allowance: [0, 0.5],
  reelMetres: 1000,
  celsius: [200, 480],
  watts: [10, 300],
  maxEnds: [3, 12],
} as const;
