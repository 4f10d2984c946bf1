/** What a build file may say in `body`, by the kind of part. Which of them goes with which type stands in `bodies-of.ts`. */
export const POT_BODIES = ["full-size", "mini", "stacked", "stacked-mini"] as const;
export const SHAFT_BODIES = ["columns", "rows"] as const;
export const SWITCH_BODIES = [
  "open-frame",
  "in-line-mirrored",
  "in-line-alike",
  "board",
  "box",
  "mini-toggle",
  "slide",
  "ring",
  "block",
] as const;
export const JACK_BODIES = ["open", "barrel", "box"] as const;

export type PotBody = (typeof POT_BODIES)[number];
export type ShaftBody = (typeof SHAFT_BODIES)[number];
export type SwitchBody = (typeof SWITCH_BODIES)[number];
export type JackBody = (typeof JACK_BODIES)[number];
