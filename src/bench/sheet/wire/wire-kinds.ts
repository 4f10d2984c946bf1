import type { WireKind } from "../../../build-file/wire-kinds.ts";

/** Which kind a person takes for what. */
export interface KindsWanted {
  readonly hot: WireKind;
  readonly ground: WireKind;
  /** From the guard to the jack's tip. */
  readonly jack: WireKind;
}

export const DEFAULT_KINDS: KindsWanted = { hot: "plastic", ground: "plastic", jack: "plastic" };

/** How the ends of a kind are made ready; common practice, no source. */
export const READY: Readonly<Record<WireKind, string>> = {
  cloth: "push the braid back, solder, let it slide forward again",
  plastic: "strip, twist and tin",
  bare: "nothing to strip; sleeve it wherever it could touch something hot",
  screened: "strip the core; ground the screen at the guard's end, and trim and sleeve it at the other",
};
