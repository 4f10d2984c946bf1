/** One of the shapes in which a part of one type is sold. */
export interface BodyKind<Name extends string = string> {
  /** What the build file says. */
  readonly name: Name;
  /** The trade's words. */
  readonly title: string;
  /** How its lugs lie, in a sentence. */
  readonly lugs: string;
  /** Makes differ in which lug is which: common practice is drawn, and the meter decides. */
  readonly checkByMeter: boolean;
}

/** What of a part is seen from the back besides its lugs, in metres about its middle. */
export type Outline =
  | { readonly form: "round"; readonly radius: number }
  | { readonly form: "box"; readonly width: number; readonly height: number };
