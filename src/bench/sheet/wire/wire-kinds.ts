/** What wire is sold as: cloth braid that is pushed back, plastic that is stripped, bare, and screened. */
export const WIRE_KINDS = ["cloth", "plastic", "bare", "screened"] as const;

export type WireKind = (typeof WIRE_KINDS)[number];

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
  screened: "strip the core and keep whiskers of the screen away from it; sleeve the screen's end",
};
