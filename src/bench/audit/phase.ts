import type { Pickup } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";
import type { SoundingPickup } from "../../response/labels/description.ts";
import { describeSetting } from "../../response/labels/setting-describer.ts";
import type { AuditContext, State } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { leadsOf } from "./reach.ts";

const namesOf = (state: State) =>
  state.described.pickups
    .map(({ pickup }) => pickup)
    .sort()
    .join();

/** Whether turning some switch other than the main one leaves the same pickups sounding, and passes the test. */
function switchable(context: AuditContext, state: State, passes: (other: State) => boolean): boolean {
  const main = context.controls.main?.name;
  const position = (candidate: State) => (main ? candidate.settings.switches[main] : undefined);
  return context.alive.some(
    (other) =>
      other !== state && position(other) === position(state) && namesOf(other) === namesOf(state) && passes(other),
  );
}

/** Whether the pickups agree; one whose own coils quarrel has no side, and is a finding of its own. */
function pickupsAgree({ described }: State): boolean {
  const sides = described.pickups.filter(({ coilsInPhase }) => coilsInPhase).map(({ inPhase }) => inPhase);
  return sides.every((side) => side === sides[0]);
}

/** For each pickup its side, +1 or −1, in one state. */
function sidesIn({ described }: State): Map<string, number> {
  return new Map(described.pickups.map(({ pickup, inPhase }) => [pickup, inPhase ? 1 : -1]));
}

/**
 * The fewest pickups that must be turned round for every pair to agree, found over all states at once; undefined where the
 * states contradict each other.
 */
function culprits(context: AuditContext, states: readonly State[]): string[] | undefined {
  const side = new Map<string, number>();
  const groups: string[][] = [];
  for (const [pickup] of context.partsOf("pickup")) {
    if (side.has(pickup)) continue;
    const group = [pickup];
    side.set(pickup, 1);
    for (const member of group) {
      for (const state of states) {
        const sides = sidesIn(state);
        if (!sides.has(member)) continue;
        for (const [other, value] of sides) {
          const expected = side.get(member)! * sides.get(member)! * value;
          if (!side.has(other)) {
            side.set(other, expected);
            group.push(other);
          } else if (side.get(other) !== expected) return undefined;
        }
      }
    }
    groups.push(group);
  }
  return groups.flatMap((group) => {
    const [plus, minus] = [1, -1].map((wanted) => group.filter((pickup) => side.get(pickup) === wanted));
    return smaller(context, plus!, minus!);
  });
}

/** Whether a pickup's metal shares a net with one of its leads, so that swapping the leads would put it on the hot side. */
function metalOnLead(context: AuditContext, pickup: string): boolean {
  const lug = `${pickup}.shield`;
  return context.neighbours(lug).some((other) => other.part === pickup);
}

function smaller(context: AuditContext, a: string[], b: string[]): string[] {
  if (a.length !== b.length) return a.length < b.length ? a : b;
  const tied = (side: string[]) => side.filter((pickup) => metalOnLead(context, pickup)).length;
  return tied(b) < tied(a) ? b : a;
}

function swapRemedy(context: AuditContext, pickups: readonly string[], state: State): string {
  const plural = pickups.length > 1 ? "each of them" : "it";
  const cover = pickups.some((pickup) => {
    const part = context.build.parts[pickup];
    return metalOnLead(context, pickup) || (part?.kind === "pickup" && part.metal && part.metal !== "none");
  });
  const jumper = cover
    ? ` If ${plural} has a cover or baseplate tied to its ground lead, first cut the cover jumper and run it to ground on its own.`
    : "";
  return `Swap the two leads of ${listed(pickups)}.${jumper} ${humWords(context, pickups, state)}`;
}

type Turning = "winding" | "magnet";

const OTHER = { forward: "reverse", reverse: "forward", north: "south", south: "north" } as const;

/** What becomes of hum in a state once pickups are turned round: by their leads, which turns winding and signal, or by their magnet. */
function humAfter({ build }: AuditContext, pickups: readonly string[], { settings }: State, turning: Turning) {
  const turned = (part: Pickup): Pickup => ({
    ...part,
    coils: Object.fromEntries(
      Object.entries(part.coils).map(([name, coil]) => [name, { ...coil, [turning]: OTHER[coil[turning]] }]),
    ),
  });
  const parts = Object.fromEntries(
    Object.entries(build.parts).map(([name, part]) => [
      name,
      part.kind === "pickup" && pickups.includes(name) ? turned(part) : part,
    ]),
  );
  return describeSetting({ ...build, parts }, settings).hum;
}

/** Which way of mending keeps hum down, worked out for both. */
function humWords(context: AuditContext, pickups: readonly string[], state: State): string {
  const [leads, magnet] = (["winding", "magnet"] as const).map((turning) => humAfter(context, pickups, state, turning));
  if (leads === null || leads === undefined) return "";
  if (leads === magnet) return `With its leads swapped, hum is ${leads} there.`;
  const rods =
    "Only a loose bar magnet can be turned: rods are never pushed out of a coil, which tears the wire; they would have to be recharged.";
  return `With its leads swapped, hum is ${leads} there; with the magnet turned instead, ${magnet}. ${rods}`;
}

const distinct = <T>(value: T, index: number, all: readonly T[]) => all.indexOf(value) === index;

function pairFinding(context: AuditContext, states: readonly State[], deliberate: boolean): Finding[] {
  if (states.length === 0) return [];
  const together = states.map(({ described }) => described.pickups.map(({ pickup }) => pickup));
  const sounding = together.flat().filter(distinct);
  const turn = deliberate ? sounding : (culprits(context, context.alive) ?? sounding.slice(0, 1));
  const groups = together.map((pickups) => pickups.join(" + ")).filter(distinct);
  return [
    finding({
      code: "pair-out-of-phase",
      ...(deliberate ? { severity: "note" as const } : {}),
      lugs: turn.flatMap((pickup) => leadsOf(context, pickup)),
      settings: context.settingsOf(states),
      message: `Out of phase ${context.where(states)}: ${listed(groups)}. Thin and weak there; an ohmmeter cannot show it, the phase check can.`,
      remedy: deliberate
        ? "Nothing to do: a switch turns the phase on purpose."
        : swapRemedy(context, turn, states[0]!),
    }),
  ];
}

/** Pickups that sound together and work against each other. */
export function pairsOutOfPhase(context: AuditContext): Finding[] {
  const opposed = context.alive.filter((state) => !pickupsAgree(state));
  const meant = opposed.filter((state) => switchable(context, state, pickupsAgree));
  const unmeant = opposed.filter((state) => !meant.includes(state));
  return [...pairFinding(context, unmeant, false), ...pairFinding(context, meant, true)];
}

const findPickup = ({ described }: State, name: string): SoundingPickup | undefined =>
  described.pickups.find(({ pickup }) => pickup === name);

/** Two coils of one pickup that work against each other. */
export function coilsOutOfPhase(context: AuditContext): Finding[] {
  return context.partsOf("pickup").flatMap(([name]) => {
    const opposed = context.alive.filter((state) => findPickup(state, name)?.coilsInPhase === false);
    if (opposed.length === 0) return [];
    const deliberate = opposed.every((state) =>
      switchable(context, state, (other) => findPickup(other, name)?.coilsInPhase === true),
    );
    return finding({
      code: "coils-out-of-phase",
      ...(deliberate ? { severity: "note" as const } : {}),
      lugs: leadsOf(context, name),
      settings: context.settingsOf(opposed),
      message: `The two coils of ${name} are out of phase ${context.where(opposed)}.`,
      remedy: deliberate
        ? "Nothing to do: a switch turns one coil on purpose."
        : "Swap the start and finish of one of its coils.",
    });
  });
}
