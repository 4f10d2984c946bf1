import { isOpen, JOINT_UP_TO_OHMS } from "../meter/hobby-meter.ts";
import type { Path } from "./paths.ts";
import { KICK_CHANCES, type KickClass, type KickWord, MISREAD_LN_SPAN, MISREAD_READING } from "./priors.ts";
import type { Structure } from "./structure.ts";

export type Shown = "open" | "joint" | "ohms";

/** What sort of thing a meter shows: nothing, a joint, or the ohms of a coil. */
export function shownBy(ohms: number | null): Shown {
  if (ohms === null || isOpen(ohms)) return "open";
  return ohms <= JOINT_UP_TO_OHMS ? "joint" : "ohms";
}

/** What a way makes a meter show when it is read right. */
export function shownAcross({ between }: Path): Shown {
  return between === "open" || between === "joint" ? between : "ohms";
}

const LN_RIGHT = Math.log(1 - MISREAD_READING);
const LN_WRONG = Math.log(MISREAD_READING / 2);
const LN_WRONG_OHMS = LN_WRONG - Math.log(MISREAD_LN_SPAN);

/** ln of the chance of a display; of ohms the density in ln ohms. What coils explain is weighed with the coils, and is 0 here. */
export function lnChanceOfShown(shown: Shown, expected: Shown): number {
  if (shown === "ohms") return expected === "ohms" ? 0 : LN_WRONG_OHMS;
  return shown === expected ? LN_RIGHT : LN_WRONG;
}

export interface KickExpected {
  readonly sort: KickClass;
  /** +1 where the needle goes up. */
  readonly sign: number;
}

/** +1 for a forward coil whose top is north, with + on its finish: winding times magnet, as everywhere. */
function magnetSign(magnets: number, coil: number): number {
  return (magnets >> coil) & 1 ? -1 : 1;
}

/** What a tap on a row makes of a needle across a way. */
export function kickExpected(
  { coils }: Structure,
  { between, signs }: Path,
  row: number,
  magnets: number,
): KickExpected {
  const coil = coils === 1 ? 0 : row;
  if (between === "open" || between === "joint") return { sort: "nothing", sign: 1 };
  if (signs[coil] === 0) return { sort: "other", sign: 1 };
  const isAlone = signs[1 - coil] === 0;
  return { sort: isAlone ? "own" : "with other", sign: signs[coil]! * magnetSign(magnets, coil) };
}

export function chanceOfKick(kick: KickWord, { sort, sign }: KickExpected): number {
  const { right, wrong, none } = KICK_CHANCES[sort];
  if (kick === "none") return none;
  return (kick === "up") === sign > 0 ? right : wrong;
}
