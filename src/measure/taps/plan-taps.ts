import { hasCoilLeads } from "../../build-file/lug-names.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, withControl } from "../../build-file/settings.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { MAX_TAP_STEPS } from "../../limits.ts";
import { coilPlaces } from "../../response/coil-places.ts";
import { type TapInput, type TapTransfer, TapTransfers } from "./tap-transfers.ts";

/** One row of poles, tapped in one setting of the switches, every dial at 10. */
export interface TapStep {
  readonly settings: Settings;
  readonly pickup: string;
  readonly coil: string;
  /** Seconds from the first step to when this one may begin. */
  readonly at: number;
  /** Whether its coil sounds there, as drawn. */
  readonly sounds: boolean;
}

/** Three taps and a pause; a hand that has to move a lever first. A judgement, no source. */
export const STEP_SECONDS = 4;
const MOVE_SECONDS = 3;
/** 26 dB under the setting's strongest coil a row only leaks in. */
const LEAKS = 0.05;

interface Row {
  readonly pickup: string;
  readonly coil: string;
}

const sizeOf = ({ re, im }: TapTransfer) => Math.hypot(re, im);

/** Which coils a setting lets through, as drawn. */
export function soundingRows(transfers: readonly TapTransfer[]): boolean[] {
  const strongest = Math.max(0, ...transfers.map(sizeOf));
  return transfers.map((each) => sizeOf(each) > LEAKS * strongest);
}

/** The main switch's positions, everything else at rest. */
function mainSettings(controls: Controls): Settings[] {
  const { main, atRest } = controls;
  if (!main) return [atRest];
  return main.table.positions.map((_, i) => withControl(controls, atRest, main.name, i + 1));
}

const apart = (a: readonly TapTransfer[], b: readonly TapTransfer[]) =>
  a.reduce((sum, { re, im }, i) => sum + Math.hypot(re - b[i]!.re, im - b[i]!.im), 0);

/** Every other position of the other switches, each where the main switch stands so that it changes most. */
function otherSettings(controls: Controls, transfers: TapTransfers, mains: readonly Settings[]): Settings[] {
  const others = controls.switches.filter((control) => control !== controls.main);
  return others.flatMap(({ name, table }) =>
    table.positions.slice(1).map((_, i) => {
      const thrown = mains.map((settings) => withControl(controls, settings, name, i + 2));
      const change = thrown.map((settings, k) => apart(transfers.in(settings), transfers.in(mains[k]!)));
      return thrown[change.indexOf(Math.max(...change))]!;
    }),
  );
}

/** Rows from the neck to the bridge. */
function rowsOf(build: Build, transfers: TapTransfers): Row[] {
  const places = coilPlaces(build, transfers.sources);
  return transfers.sources
    .map(({ pickup, coil }, i) => ({ pickup, coil, distance: places[i]!.distanceMetres }))
    .sort((a, b) => b.distance - a.distance)
    .map(({ pickup, coil }) => ({ pickup, coil }));
}

/**
 * Fewest taps that still tell what every switch does: each row in each setting; but of a pickup whose coils are joined inside the second
 * row only once, where the pickup first sounds, since no switch can part them.
 */
function everyTap(build: Build, input: TapInput | undefined, checkpoint: Checkpoint): TapStep[] {
  const transfers = new TapTransfers(build, input, checkpoint);
  const controls = new Controls(build);
  const mains = mainSettings(controls);
  const settings = [...mains, ...otherSettings(controls, transfers, mains)];
  const rows = rowsOf(build, transfers);
  const shown = new Set<string>();
  let at = -MOVE_SECONDS;
  return settings.flatMap((state, index) => {
    at += MOVE_SECONDS;
    const here = transfers.in(state);
    const sounding = soundingRows(here);
    const sounds = ({ pickup, coil }: Row) =>
      sounding[here.findIndex((each) => each.pickup === pickup && each.coil === coil)]!;
    const done = new Set<string>();
    // A take in which nothing is heard at first does not tell when it began.
    const inOrder = index === 0 ? [...rows].sort((a, b) => Number(sounds(b)) - Number(sounds(a))) : rows;
    return inOrder.flatMap((row): TapStep[] => {
      const part = build.parts[row.pickup]!;
      const isWhole = part.kind === "pickup" && Object.keys(part.coils).length === 2 && !hasCoilLeads(part);
      if (isWhole && done.has(row.pickup) && (shown.has(row.pickup) || !sounds(row))) return [];
      if (isWhole && done.has(row.pickup)) shown.add(row.pickup);
      done.add(row.pickup);
      at += STEP_SECONDS;
      return [{ settings: state, ...row, at: at - STEP_SECONDS, sounds: sounds(row) }];
    });
  });
}

export interface TapPlan {
  readonly steps: readonly TapStep[];
  /** How many steps one take has no room for: a guard of many switches. */
  readonly leftOut: number;
}

/** As many of them as one take holds. */
export function tapPlan(build: Build, input?: TapInput, checkpoint: Checkpoint = NO_CHECKPOINT): TapPlan {
  const all = everyTap(build, input, checkpoint);
  return { steps: all.slice(0, MAX_TAP_STEPS), leftOut: Math.max(0, all.length - MAX_TAP_STEPS) };
}

export const planTaps = (build: Build, input?: TapInput): readonly TapStep[] => tapPlan(build, input).steps;
