/** What wire is sold as: cloth braid that is pushed back, plastic that is stripped, bare, and screened. */
export const WIRE_KINDS = ["cloth", "plastic", "bare", "screened"] as const;

export type WireKind = (typeof WIRE_KINDS)[number];

/** A screened wire of unknown make, farads a metre: the published common figure for interconnect cable. */
export const USUAL_SCREENED_FARADS_PER_METRE = 100e-12;
