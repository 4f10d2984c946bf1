import { decibels } from "../../decibels.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import { isDeadHalf } from "./dead-half.ts";
import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import { fitTapLevels, HAND_DB, LEAK_DB, normal, under } from "./tap-levels.ts";

/** One row in one setting, as drawn and as heard. */
export interface TapCell {
  readonly heard: HeardTap;
  readonly isExpected: boolean;
  /** Whether it sounds; undefined where its level lies between. */
  readonly sounds: boolean | undefined;
  /** That it sounds, 0 to 1. */
  readonly chance: number;
  /** Whether it swings as drawn, the whole take's sign taken as most rows have it; undefined where that is not clear. */
  readonly agrees: boolean | undefined;
  /** dB over what it should be where it should sound and something is heard. */
  readonly over: number | undefined;
}

/** A coil that sounds where none should: somewhere here under one alone, and how surely. dB; a judgement, no source. */
const USUAL_DB = -4;
const USUAL_SPREAD_DB = 6;
const CLEAR = 0.85;
const SURE_OF_SIGN = 0.9;
/** What reaches the jack turned by more than this says nothing by its first swing: cos 60°. */
const STRAIGHT = 0.5;
/** 20 dB under the strongest row of any setting a row as drawn is not meant to be heard. */
const MEANT = 0.1;

const sizeOf = ({ re, im }: ForetoldTap) => Math.hypot(re, im);

function chanceOf(heard: HeardTap, foretold: ForetoldTap, isExpected: boolean, over: number): number {
  const level = isExpected ? decibels(sizeOf(foretold)) : USUAL_DB;
  const spread = isExpected ? HAND_DB : USUAL_SPREAD_DB;
  const leak = decibels(foretold.leak);
  const density = (expected: number, width: number) =>
    heard.level === undefined
      ? under((heard.floor - over - expected) / width)
      : normal(heard.level - over - expected, width);
  // What leaks may always be fainter than thought, and what sounds louder.
  if (heard.level !== undefined && heard.level - over > level) return 1;
  if (heard.level !== undefined && heard.level - over < leak) return 0;
  const [sounding, silent] = [density(level, spread), density(leak, LEAK_DB)];
  return sounding + silent > 0 ? sounding / (sounding + silent) : 0.5;
}

const signOf = ({ re }: ForetoldTap) => (re < 0 ? -1 : 1);

interface Judged {
  readonly heard: HeardTap;
  readonly foretold: ForetoldTap;
  readonly isExpected: boolean;
  readonly sounds: boolean | undefined;
  readonly chance: number;
}

const clear = (chance: number) => (chance > CLEAR ? true : chance < 1 - CLEAR ? false : undefined);

/** The rows of pickups with two of them that are heard through their neighbours alone, where those sound. */
function deadHalves(judged: readonly Judged[], gain: number): Set<string> {
  const besideSounding = ({ heard: { step } }: Judged) =>
    judged.some(
      ({ heard: { step: other }, sounds }) =>
        sounds === true && other.settings === step.settings && other.pickup === step.pickup && other.coil !== step.coil,
    );
  const rows = grouped(
    judged.filter((cell) => cell.isExpected && besideSounding(cell)),
    rowKey,
  );
  const dead = rows.filter((row) =>
    isDeadHalf(
      row.map(({ heard }) => heard),
      row.map(({ foretold }) => foretold),
      gain,
    ),
  );
  return new Set(dead.map(([first]) => rowKey(first!)));
}

/** 1 or −1 as a row swings, over as it should; 0 where that says nothing. */
function sideOf({ heard, foretold, isExpected, sounds }: Judged): number {
  const isStraight = Math.abs(foretold.re) > STRAIGHT * sizeOf(foretold);
  return isExpected && isStraight && sounds === true && heard.certainty > SURE_OF_SIGN
    ? heard.sign * signOf(foretold)
    : 0;
}

/** Every step judged by itself, but for halves that are dead throughout; `heard` and `foretold` in one order. */
export function tapCells(heard: readonly HeardTap[], foretold: readonly ForetoldTap[]): TapCell[] {
  const { gain, rows } = fitTapLevels(heard, foretold);
  // Of a take without any level there is none to hold a row to.
  const isMute = heard.every(({ level }) => level === undefined);
  const strongest = Math.max(...foretold.map(sizeOf));
  const each = heard.map((tap, i): Judged => {
    const isExpected = sizeOf(foretold[i]!) > MEANT * strongest;
    const chance = isMute ? 0 : chanceOf(tap, foretold[i]!, isExpected, gain + (rows.get(rowKey({ heard: tap })) ?? 0));
    // What a hand brings to a pole that nothing grounds comes and goes without a side.
    const sounds = isExpected || tap.certainty > SURE_OF_SIGN ? clear(chance) : clear(Math.min(chance, 0.5));
    return { heard: tap, foretold: foretold[i]!, isExpected, sounds, chance };
  });
  const dead = deadHalves(each, gain);
  const judged = each.map((cell) => (dead.has(rowKey(cell)) ? { ...cell, sounds: false } : cell));
  const sides = judged.map(sideOf);
  // Each pickup has one vote, however often it was tapped.
  const votes = grouped(
    judged.map((cell, i) => ({ ...cell, side: sides[i]! })),
    ({ heard: { step } }) => step.pickup,
  ).map((cells) => Math.sign(cells.reduce((sum, { side }) => sum + side, 0)));
  const most = votes.reduce((sum, vote) => sum + vote, 0);
  // Where as many go one way as the other, the first is taken to be as drawn.
  const flip = most === 0 ? (sides.find((side) => side !== 0) ?? 1) : Math.sign(most);
  const over = ({ heard: { level }, isExpected, foretold: tap }: Judged) =>
    isExpected && level !== undefined ? level - gain - decibels(sizeOf(tap)) : undefined;
  return judged.map(({ foretold: _, ...cell }, i) => ({
    ...cell,
    over: over(judged[i]!),
    agrees: sides[i] === 0 ? undefined : sides[i] === flip,
  }));
}
