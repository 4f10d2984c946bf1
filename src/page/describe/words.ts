import { NAMED_SWITCH_TYPES } from "../../build-file/switch-types.ts";
import type { Option } from "../fields/plain-fields.ts";

const SWITCH_WORDS: Readonly<Record<(typeof NAMED_SWITCH_TYPES)[number], string>> = {
  "lever-3": "lever, three positions",
  "lever-5": "lever, five positions",
  "lever-5-four-pole": "lever, five positions, four poles",
  "toggle-3": "toggle, three positions",
  spdt: "on–on, one pole (SPDT)",
  dpdt: "on–on, two poles (DPDT)",
  "dpdt-on-on-on": "on–on–on, two poles",
};

export const SWITCH_OPTIONS: readonly Option[] = NAMED_SWITCH_TYPES.map((value) => ({
  value,
  label: SWITCH_WORDS[value],
}));

export const TAPER_OPTIONS: readonly Option[] = [
  { value: "audio", label: "audio" },
  { value: "linear", label: "linear" },
  { value: "reverse-audio", label: "reverse audio" },
];

export const KIND_WORDS: Readonly<Record<string, string>> = {
  pickup: "pickup",
  pot: "pot",
  switch: "switch",
  cap: "cap",
  resistor: "resistor",
  jack: "jack",
  terminal: "terminal",
};

const HOWS = ["wire", "bent lug", "jumper", "leg", "lead", "bus wire", "braid", "inside"];
export const HOW_OPTIONS: readonly Option[] = HOWS.map((value) => ({ value, label: value }));
