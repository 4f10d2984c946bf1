import type { PickupHeight } from "../../bench/passport/passport.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import { inMillimetres } from "../fields/in-millimetres.ts";

/** What a person writes about a guard beside what it is. */
export interface Details {
  readonly guitar: string;
  readonly date: string;
  readonly notes: string;
  /** As they were written, by the reading's label. */
  readonly noted: Readonly<Record<string, string>>;
  /** As they were written, by pickup. */
  readonly heights: Readonly<Record<string, { readonly bass: string; readonly treble: string }>>;
}

/** From string to pole, in metres; a plain number is millimetres. @throws QuantityError */
export function heightOf(text: string): number {
  return parseQuantity(inMillimetres(text), "length").value;
}

/** Heights in metres; a pickup of which one end is not written is left out. @throws QuantityError */
export function heightsIn({ heights }: Details): Record<string, PickupHeight> {
  return Object.fromEntries(
    Object.entries(heights)
      .filter(([, { bass, treble }]) => bass !== "" && treble !== "")
      .map(([pickup, { bass, treble }]) => [pickup, { bass: heightOf(bass), treble: heightOf(treble) }]),
  );
}
