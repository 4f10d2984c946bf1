import { NAMED_SWITCH_TYPES } from "../../build-file/switch-types.ts";
import { SWITCH_WORDS } from "../../build-file/switch-words.ts";
import { WIRE_MEANS } from "../../build-file/wire-means.ts";
import type { Option } from "../fields/plain-fields.ts";

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

export const HOW_OPTIONS: readonly Option[] = WIRE_MEANS.map((value) => ({ value, label: value }));
