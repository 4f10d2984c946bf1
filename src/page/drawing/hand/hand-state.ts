import type { WireSource } from "../../state/reading.ts";

export type WireEnd = "from" | "to";

/** What is being laid, with the lug that it hangs on already. */
export type Held =
  | { readonly kind: "new"; readonly from: string }
  | { readonly kind: "end"; readonly from: string; readonly wire: WireSource; readonly end: WireEnd };

export type Chosen =
  | { readonly kind: "lug"; readonly name: string }
  | { readonly kind: "wire"; readonly wire: WireSource }
  | { readonly kind: "part"; readonly name: string };

export interface HandState {
  readonly held: Held | undefined;
  readonly chosen: Chosen | undefined;
  /** The lug that is pointed at or has the focus. */
  readonly over: string | undefined;
  /** Why a wire from what is held to a lug would make a fault, as far as that is known. */
  readonly warnings: ReadonlyMap<string, string>;
  /** What was done last, in words. */
  readonly said: string;
}

export const EMPTY_HAND: HandState = {
  held: undefined,
  chosen: undefined,
  over: undefined,
  warnings: new Map(),
  said: "",
};
