import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { TURN_STEP_DEGREES } from "../../build-file/turn-step.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { listed } from "../../english.ts";
import { clockOf } from "./clock.ts";
import { facingTones } from "./facing-tones.ts";
import { WireLengths } from "./wire-lengths.ts";

/** How a pot is turned so that the guard's wires are shortest. */
export interface BestTurn {
  readonly part: string;
  /** Degrees counter-clockwise as seen from the back. */
  readonly turn: number;
  /** Where its lugs point then, as hours on a clock face: "4 o'clock". */
  readonly clock: string;
  /** Metres by which this turn alone shortens the wires, all other pots turned as advised. */
  readonly metresSaved: number;
  readonly why: string;
}

const STEPS = 360 / TURN_STEP_DEGREES;
/** Shorter by less is not worth a turn, in metres. */
const WORTH = 0.002;
/** Each round makes the sum shorter, and there are few turns: it ends long before. */
const MAX_ROUNDS = 50;

function turnsNow(build: Build): Map<string, number> {
  return new Map(Object.entries(build.parts).map(([name, { place }]) => [name, place?.turn ?? 0]));
}

/** Turns one pot after the other to where its own wires are shortest, until none would be turned again. */
function settled(
  lengths: WireLengths,
  pots: readonly string[],
  start: ReadonlyMap<string, number>,
): Map<string, number> {
  const turns = new Map(start);
  for (let round = 0; round < MAX_ROUNDS; round++) {
    let hasTurned = false;
    for (const pot of pots) {
      let [best, least] = [turns.get(pot)!, lengths.ofPart(pot, turns) - WORTH];
      for (let step = 0; step < STEPS; step++) {
        const turn = step * TURN_STEP_DEGREES;
        const length = lengths.ofPart(pot, new Map(turns).set(pot, turn));
        if (length < least - 1e-9) [best, least] = [turn, length];
      }
      if (best !== turns.get(pot)) hasTurned = true;
      turns.set(pot, best);
    }
    if (!hasTurned) break;
  }
  return turns;
}

/** @param twin a tone that it shares a leg with and faces then */
function reason(build: Build, part: string, millimetres: number, twin: string | undefined): string {
  const words = partWords(build.parts);
  const facing = twin === undefined ? "" : ` Its lugs face the ${words.get(twin)}, with which it shares a leg.`;
  const ends = build.wires.flatMap(({ from, to }) => {
    const [a, b] = [from.split(".")[0]!, to.split(".")[0]!];
    return a === part && b !== part ? [b] : b === part && a !== part ? [a] : [];
  });
  const others = [...new Set(ends)].map((name) => words.get(name)!);
  return `Its wires go to the ${listed(others)}: turned so, they are ${millimetres} mm shorter.${facing}`;
}

/**
 * Which pots to turn before anything is soldered, and where to, so that all wires together are shortest: by steps, one pot after
 * the other until none would be turned again. Never longer than as it stands; a pot that is well as it is, is not named.
 */
export function bestTurns(build: Build): BestTurn[] {
  const lengths = new WireLengths(build);
  const pots = partsOfKind(build, "pot").map(([name]) => name);
  const before = turnsNow(build);
  const turns = settled(lengths, pots, before);
  const twins = facingTones(build);
  return pots.flatMap((part) => {
    const turn = turns.get(part)!;
    if (turn === (before.get(part)! + 360) % 360) return [];
    const left = lengths.ofPart(part, new Map(turns).set(part, before.get(part)!));
    const metresSaved = left - lengths.ofPart(part, turns);
    if (metresSaved < WORTH) return [];
    const twin = twins.get(part);
    const faced = twin !== undefined && lengths.isFacing(part, twin, turns) ? twin : undefined;
    const why = reason(build, part, Math.round(metresSaved * 1000), faced);
    return [{ part, turn, clock: clockOf(turn), metresSaved, why }];
  });
}
