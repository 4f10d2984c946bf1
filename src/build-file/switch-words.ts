import type { NAMED_SWITCH_TYPES } from "./switch-types.ts";

/** The trade's words for the switches whose name says all. */
export const SWITCH_WORDS: Readonly<Record<(typeof NAMED_SWITCH_TYPES)[number], string>> = {
  "lever-3": "three-position lever switch, two poles",
  "lever-5": "five-position lever switch, two poles",
  "lever-5-four-pole": "five-position lever switch, four poles",
  "toggle-3": "three-position toggle switch",
  spdt: "small switch, on-on, one pole (SPDT)",
  dpdt: "small switch, on-on, two poles (DPDT)",
  "dpdt-on-on-on": "small switch, on-on-on, two poles (DPDT)",
};
