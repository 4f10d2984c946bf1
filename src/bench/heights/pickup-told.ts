import { dbPerMillimetre } from "./distance-law.ts";
import type { FittedLaws } from "./fit-laws.ts";
import { gapUnder } from "./gaps.ts";
import type { PickupTold, ScrewTold } from "./heights-told.ts";
import { lawWords } from "./heights-words.ts";
import { relativePull } from "./magnet-pull.ts";
import { gapOf, type Side, TURN_STEP } from "./screws.ts";
import type { SolvedPickup, SolvedScrew } from "./solve-turns.ts";
import { moveWords } from "./turn-words.ts";

function screwTold({ pickup }: SolvedPickup, screw: SolvedScrew): ScrewTold {
  const { side, travel, travelError } = screw;
  const pitch = pickup.pitchMetres[side];
  // Both pitches are needed for either, since a pickup tilts about its other screw.
  const isKnown = pickup.pitchMetres.bass !== undefined && pickup.pitchMetres.treble !== undefined;
  const turns = isKnown && pitch !== undefined ? Math.round(travel / pitch / TURN_STEP) * TURN_STEP : null;
  const least = turns === null ? 5e-6 : TURN_STEP * pitch! * 0.5;
  const direction = Math.abs(travel) < least ? "stays" : travel > 0 ? "down" : "up";
  const clockwise = (direction === "down") === pickup.clockwiseLowers;
  return {
    ...screw,
    turns,
    turnsError: turns === null ? null : travelError / pitch!,
    direction,
    clockwise,
    text: moveWords({ side, direction, turns, travelMetres: travel, clockwise }),
  };
}

export function pickupTold(solved: SolvedPickup, index: number, fitted: FittedLaws, stringCount: number): PickupTold {
  const { pickup, gaps, screws } = solved;
  const law = fitted.laws[index]!;
  const middle = gapUnder(pickup.gaps, (stringCount + 1) / 2, stringCount);
  const pull = (side: Side) =>
    relativePull(pickup.magnet, gapOf(gaps, side)) / relativePull(pickup.magnet, gapOf(pickup.gaps, side));
  return {
    name: pickup.name,
    law: {
      exponent: fitted.exponents[index]!,
      exponentError: fitted.t * fitted.exponentErrors[index]!,
      offset: law.offsetMetres,
      perMillimetre: dbPerMillimetre(law, middle),
      text: lawWords(pickup.name, fitted, index, middle),
    },
    screws: screws.map((screw) => screwTold(solved, screw)),
    pull: { bass: pull("bass"), treble: pull("treble") },
  };
}
