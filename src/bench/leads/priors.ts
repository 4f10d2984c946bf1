/**
 * How common things are before anything is measured, and how often a person at the bench misreads. All of it is common practice,
 * no source: what decides a labelling is measured, and these only rank what the measurements leave open.
 */

/** Where nobody says how many coils there are. */
export const COILS_PRIOR = { 1: 0.5, 2: 0.5 } as const;

/** How two coils leave the maker: every end brought out, joined inside in a row, or side by side. */
export const ARRANGEMENT_PRIOR = { apart: 0.6, series: 0.36, parallel: 0.04 } as const;
/** Of coils joined in a row, how often their joint is brought out as a lead. */
export const TAP_PRIOR = 0.35;

/** Where the metal goes: a lead of its own, tied to a lead's end inside, or to nothing that a meter reaches. */
export const METAL_PRIOR = { drain: 0.45, tied: 0.3, unreached: 0.25 } as const;
/** Of metal tied to an end, how often it has a lead of its own besides. */
export const DOUBLED_LEAD_PRIOR = 0.15;

/** Each coil that is open inside. */
export const BROKEN_COIL_PRIOR = 0.03;
/** A lead that came off within the pickup: there, and joined to nothing. */
export const BROKEN_LEAD_PRIOR = 0.01;
/** A lead more than anything needs, or an end that was never brought out. */
export const ODD_LEAD_PRIOR = 0.02;

/** Poles of two coils with unlike ends up, as in a humbucker. */
export const OPPOSITE_MAGNETS_PRIOR = 0.9;
/** Coils joined inside so that they cancel hum and their signals aid; the rest is spread over the other ways. */
export const HUMBUCKING_JOINT_PRIOR = 0.85;

/** One coil, ln ohms: two thirds lie between 2.4 and 10 kΩ. */
export const COIL_LN_OHMS = Math.log(5000);
export const COIL_LN_DEVIATION = 0.7;
/** ln of the ratio of two coils of one pickup: wound alike, or on purpose unlike. */
export const COIL_RATIOS = [
  { weight: 0.9, deviation: 0.05 },
  { weight: 0.1, deviation: 0.5 },
] as const;

/** A hobby meter's own error, as a fraction. */
export const METER_DEVIATION = 0.01;
/** A probe that slipped, or a display misread. */
export const MISREAD_READING = 0.003;
/** What a misread display may show: any ohms from 1 to 20 MΩ, the same in every decade. */
export const MISREAD_LN_SPAN = Math.log(20e6);
export const MISREAD_COMPASS = 0.03;

export type KickWord = "up" | "down" | "none";
/** What a tap on a row shows across leads, by what lies between them. The sign is that of the coil under the row. */
export type KickClass = "own" | "with other" | "other" | "nothing";

interface KickChances {
  /** The direction that the tapped coil gives. */
  readonly right: number;
  readonly wrong: number;
  readonly none: number;
}

/** The other coil of one pickup shares some of the flux and kicks weakly, in a direction that is not relied on. */
export const KICK_CHANCES: Readonly<Record<KickClass, KickChances>> = {
  own: { right: 0.96, wrong: 0.02, none: 0.02 },
  "with other": { right: 0.94, wrong: 0.03, none: 0.03 },
  other: { right: 0.12, wrong: 0.12, none: 0.76 },
  nothing: { right: 0.015, wrong: 0.015, none: 0.97 },
};
