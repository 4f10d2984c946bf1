import type { Build } from "../../build-file/schema.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { PlayedGuard } from "../heights/habits/played-guard.ts";
import { toneHabit } from "../heights/habits/tone-habit.ts";
import { type PassportReading, type PassportRequest, type PickupHeight, passportOf } from "../passport/passport.ts";
import { leavingWires } from "./connections.ts";
import { heightLines } from "./height-lines.ts";
import { type NearestSound, nearestOf, nearestWords } from "./nearest.ts";
import { type DriveOf, type GuardSound, movesOf, soundsOf } from "./sounds.ts";
import { cautionsFor, type HowLetGo, type SwapStep, staysWords, stepsIn, stepsOut } from "./steps.ts";
import { humFree, switchChanges } from "./switch-changes.ts";
import { noLoadWords, volumeKnobs } from "./volume-knob.ts";

export interface SwapRequest {
  readonly guitar?: string | undefined;
  /** ISO 8601, a day. */
  readonly date?: string | undefined;
  /** How the wires that leave either guard are let go and taken up. */
  readonly how: HowLetGo;
  /** °C, of the coils. */
  readonly temperature: number;
  readonly meter?: PassportRequest["meter"];
  /** What a meter showed of the new guard before, by the label of an acceptance reading. */
  readonly noted: Readonly<Record<string, string>>;
  /** Kept heights of the new guard's pickups and of the old one's. */
  readonly heights: Readonly<Record<string, PickupHeight>>;
  readonly heightsOut: Readonly<Record<string, PickupHeight>>;
}

export interface PlayerLine extends Omit<NearestSound, "of" | "nearest"> {
  readonly position: string;
  readonly label: string;
  readonly nearest: string | null;
  readonly nearestLabel: string | null;
  readonly text: string;
}

export interface SwapCard {
  readonly out: string;
  readonly in: string;
  readonly guitar: string | null;
  readonly date: string | null;
  readonly cautions: readonly string[];
  readonly stepsOut: readonly SwapStep[];
  readonly stepsIn: readonly SwapStep[];
  readonly stays: readonly string[];
  readonly heights: readonly string[];
  readonly readings: readonly PassportReading[];
  /** Every position of the old guard, and where its sound is now. */
  readonly player: readonly PlayerLine[];
  /** Sounds of the new guard that the old one had nothing like. */
  readonly fresh: readonly { readonly position: string; readonly label: string }[];
  readonly humFree: { readonly before: readonly string[]; readonly after: readonly string[] };
  /** How the volume goes, by the positions of the main switch, from 1, for which it goes so. */
  readonly volume: ReturnType<typeof volumeKnobs>;
  /** Which tone knobs work in each position both guards have, and what their dials mean. */
  readonly tone: readonly string[];
  readonly switches: readonly string[];
  readonly notes: readonly string[];
}

function playerLine(found: NearestSound, guard: string): PlayerLine {
  const { of, nearest, ...figures } = found;
  return {
    ...figures,
    position: of.position,
    label: of.label,
    nearest: nearest?.position ?? null,
    nearestLabel: nearest?.label ?? null,
    text: nearestWords(found, guard),
  };
}

function freshSounds(into: readonly GuardSound[], out: readonly GuardSound[]): SwapCard["fresh"] {
  return into
    .filter((sound) => sound.sound && [null, "another-sound"].includes(nearestOf(sound, out).audible))
    .map(({ position, label }) => ({ position, label }));
}

function toneLines(old: PlayedGuard, now: PlayedGuard, positions: number, checkpoint: () => void): string[] {
  return Array.from({ length: positions }, (_, index) => {
    checkpoint();
    return toneHabit(old, now, index).text;
  });
}

/** Rotary switches have a dozen; more are not gone through by ear. */
const MOST_POSITIONS = 12;

/**
 * What to do, and what to tell the player, when one loaded guard takes another's place. Everything is worked out from the two build
 * files, at equal heights of the pickups.
 * @param driveOf what a guard's coils are driven by where its sounds are weighed
 * @throws PresolderError REQUEST_INVALID naming a label or pickup that a guard does not have
 */
export function swapCard(
  out: Build,
  into: Build,
  request: SwapRequest,
  driveOf: DriveOf,
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
): SwapCard {
  const [leavingOut, leavingIn] = [leavingWires(out), leavingWires(into)];
  const [before, after] = [out, into].map((build) => soundsOf(build, driveOf, () => checkpoint()));
  const [old, now] = [new PlayedGuard(out), new PlayedGuard(into)];
  const shared = Math.min(old.positions.length, now.positions.length, MOST_POSITIONS);
  const { temperature, meter, noted } = request;
  const title = (build: Build, other: string) => build.title || other;
  const paper = passportOf(into, { temperature, meter, noted, heights: request.heights, drawer: [] });
  return {
    out: title(out, "the old guard"),
    in: title(into, "the new guard"),
    guitar: request.guitar || null,
    date: request.date ?? null,
    cautions: cautionsFor([...leavingOut, ...leavingIn], request.how),
    stepsOut: stepsOut(leavingOut, request.how),
    stepsIn: stepsIn(leavingIn, request.how),
    stays: staysWords(leavingOut, leavingIn, request.how),
    heights: heightLines(out, into, request),
    readings: paper.readings,
    player: before!.map((sound) => playerLine(nearestOf(sound, after!), "the new guard")),
    fresh: freshSounds(after!, before!),
    humFree: { before: humFree(before!), after: humFree(after!) },
    volume: volumeKnobs(old, now, shared),
    tone: toneLines(old, now, shared, () => checkpoint()),
    switches: switchChanges(before!, after!, new Set(movesOf(into).map(({ moved }) => moved))),
    notes: [...noLoadWords(old, now), SAME_HEIGHTS],
  };
}

const SAME_HEIGHTS =
  "Levels and likeness are the build files' own, both guards at equal heights: the heights that you set come on top of them.";
