import type { Piece } from "../../drawer/pieces.ts";
import type { FamilyQuestion } from "./families.ts";

export interface BuildableQuestion extends FamilyQuestion {
  /** What lies there and is not soldered in. */
  readonly free: readonly Piece[];
}
