import { hasCoilLeads } from "../../build-file/lug-names.ts";
import { suggestion } from "../../build-file/nearest.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build, BuildInput, Pickup } from "../../build-file/schema.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { capitalised, listed } from "../../english.ts";
import { faultAt } from "../../errors.ts";
import { emfSign, humSign } from "../../response/pickup-elements.ts";
import { pickupPlaces } from "../harness/pickup-places.ts";
import { phaseCheck } from "../phase-check.ts";
import type { Found } from "./find-leads.ts";
import { type Hookup, hookupsOf, metalIsHot, usualWay, type Wanted } from "./hookups.ts";
import { unmeasuredCoils } from "./ohms-at-20.ts";
import { ownType } from "./own-type.ts";
import { putIntoGuard } from "./put-into-guard.ts";
import type { Question } from "./question.ts";
import type { Labelling } from "./weigh.ts";
import { whyNot, wiringOf } from "./wiring-words.ts";
import { coilWords, poleOf } from "./words.ts";

/** A guard in its long form and read, and the pickup's place in it: a pickup's name, or a free lug of the harness. */
export interface GuardPlace {
  readonly build: Build;
  readonly source: BuildInput;
  readonly place: string;
}

/** The name of a pickup that comes new into a harness. */
const NEW_NAME = "unknown";

function newName(parts: Build["parts"]): string {
  let name = NEW_NAME;
  for (let index = 2; name in parts; index++) name = `${NEW_NAME}${index}`;
  return name;
}

/** An ordinary pickup on a free lug, to be replaced at once. */
function withStandIn({ build, source, place }: GuardPlace): { source: BuildInput; name: string } {
  const name = newName(build.parts);
  const [jack] = partsOfKind(build, "jack")[0]!;
  const { coils } = ownType([{ name: "coil", ohms: 6000, winding: "forward", magnet: "north" }], {});
  return {
    name,
    source: {
      ...source,
      parts: { ...source.parts, [name]: { kind: "pickup", coils: { ...coils } } },
      wires: [
        ...source.wires,
        { from: `${name}.hot`, to: place, how: "lead" },
        { from: `${name}.ground`, to: `${jack}.sleeve`, how: "lead" },
      ],
    },
  };
}

function placed(guard: GuardPlace): { source: BuildInput; name: string } {
  const { build, source, place } = guard;
  if (build.parts[place]?.kind === "pickup") return { source, name: place };
  const free = pickupPlaces(build);
  if (free.includes(place)) return withStandIn(guard);
  const known = [...partsOfKind(build, "pickup").map(([name]) => name), ...free];
  const expected = known.map((each) => `"${each}"`).join(", ");
  throw faultAt(
    "REQUEST_INVALID",
    "place",
    `"${place}" is neither a pickup nor a free place${suggestion(place, known)}; expected one of ${expected}`,
  );
}

type Candidate = { readonly wanted: Wanted; readonly guard: BuildInput; readonly build: Build };

/** −1, 0 or +1: whether the pickup kicks as most of the others do at the jack. */
function agreement({ build }: Candidate, name: string): number {
  const { pickups } = phaseCheck(build);
  const signOf = (kick: "up" | "down" | null) => (kick === null ? 0 : kick === "up" ? 1 : -1);
  const own = signOf(pickups.find(({ pickup }) => pickup === name)!.kickAtJack);
  const others = pickups.filter(({ pickup }) => pickup !== name);
  const most = Math.sign(others.reduce((sum, { kickAtJack }) => sum + signOf(kickAtJack), 0));
  return most === 0 ? own : own * most;
}

/** How a coil's hum stands to its signal; of two in phase the hum cancels where it differs. */
const humToSignal = (coil: Parameters<typeof emfSign>[0]) => emfSign(coil) * humSign(coil);

function cancelsItself({ coils }: Pickup): boolean {
  const sides = Object.values(coils).map(humToSignal);
  return sides.length === 2 && sides[0] !== sides[1];
}

const TURN_A_MAGNET =
  "Only a magnet turned over makes it cancel: where a loose bar magnet lies under the coil, turn it over and exchange hot and ground; rods are never pulled out.";

interface HumBeside {
  readonly pickup: string;
  readonly cancelsHum: boolean;
  readonly text: string;
}

function coilThatCancels(question: Question, labelling: Labelling, side: number): string | undefined {
  const { structure, magnets } = labelling;
  const coil = [0, 1].find((each) => humToSignal({ winding: "forward", magnet: poleOf(magnets, each) }) !== side);
  return structure.coils === 2 && structure.arrangement !== "parallel" && coil !== undefined
    ? coilWords(question, structure, coil)
    : undefined;
}

function humBeside(found: Found, main: Hookup, name: string, words: string, other: Pickup): HumBeside {
  const { question, labellings } = found;
  const labelling = labellings[0]!;
  const beside = `${capitalised(words)}: `;
  const otherCancels = cancelsItself(other);
  if (main.cancelsHum && otherCancels)
    return { pickup: name, cancelsHum: true, text: `${beside}each cancels its own hum.` };
  const side = humToSignal(Object.values(other.coils)[0]!);
  if (main.cancelsHum) {
    const coil = coilThatCancels(question, labelling, side);
    const split = coil === undefined ? "" : ` ${capitalised(coil)} alone beside it cancels it.`;
    return {
      pickup: name,
      cancelsHum: false,
      text: `${beside}this pickup cancels its own hum, the other's stays.${split}`,
    };
  }
  if (otherCancels) {
    const own = humToSignal({ winding: "forward", magnet: poleOf(labelling.magnets, 0) });
    const sister = Object.entries(other.coils).find(([, coil]) => humToSignal(coil) !== own)?.[0];
    const split = hasCoilLeads(other) && sister !== undefined ? ` Its ${sister} coil alone cancels it.` : "";
    return { pickup: name, cancelsHum: false, text: `${beside}it cancels its own hum, this pickup's stays.${split}` };
  }
  const own = humToSignal({ winding: "forward", magnet: poleOf(labelling.magnets, 0) });
  if (main.cancelsHum === null && own !== side)
    return { pickup: name, cancelsHum: true, text: `${beside}in phase, and the two cancel hum.` };
  const why = main.cancelsHum === null ? "their tops are the same pole, so in phase their hum adds." : "its hum stays.";
  return { pickup: name, cancelsHum: false, text: `${beside}${why} ${TURN_A_MAGNET}` };
}

function candidatesIn(found: Found, source: BuildInput, name: string): Candidate[] {
  const { question, labellings } = found;
  return [false, true].flatMap((isTurned) => {
    const wanted = usualWay(question, labellings[0]!, isTurned);
    const guard = putIntoGuard(question, labellings[0]!, source, name, wanted);
    return guard ? [{ wanted, guard, build: readBuild(guard) }] : [];
  });
}

function phaseWords({ aids }: Hookup, isInPhase: boolean): string {
  if (!aids) return "Its coils are against each other, so that it is in phase with nothing";
  return isInPhase ? "In phase with the guard's other pickups" : "No setting lets it through to the jack";
}

/** Where the values that it is put in with come from. */
function valuesNote(question: Question, labelling: Labelling): string {
  const guessed = unmeasuredCoils(labelling).map((coil) => coilWords(question, labelling.structure, coil));
  const ohms =
    guessed.length === 0
      ? "Its resistances are measured"
      : `The resistance of ${listed(guessed)} is not measured, and taken as such coils usually are`;
  return `${ohms}; inductance, capacitance, loss and output are those of the nearest type of the catalogue, scaled by the resistance.`;
}

/**
 * The pickup in a guard, by the likeliest labelling: which lead is hot so that it sounds in phase with most of the others.
 * @throws PresolderError REQUEST_INVALID where there is no such place
 */
export function leadsInGuard(found: Found, guard: GuardPlace) {
  const { question, labellings } = found;
  const labelling = labellings[0]!;
  const { source, name } = placed(guard);
  const candidates = candidatesIn(found, source, name);
  const [first] = candidates;
  if (!first)
    return {
      withGuard: { place: guard.place, name: null, text: whyNot(question, labelling), wiring: null, beside: [] },
      guard: null,
    };
  const chosen = candidates.find((each) => agreement(each, name) > 0) ?? first;
  const { wanted, build } = chosen;
  const [main] = hookupsOf(question, labelling, wanted);
  const words = partWords(build.parts);
  const others = partsOfKind(build, "pickup").filter(([each]) => each !== name);
  const phase = phaseWords(main!, agreement(chosen, name) > 0);
  const cut = metalIsHot(question, labelling, main!) ? " Cut the metal's jumper first." : "";
  return {
    withGuard: {
      place: guard.place,
      name,
      text: `${others.length === 0 ? "The guard's only pickup" : phase}: ${main!.hot.join(" and ")} hot, ${main!.ground.join(" and ")} ground.${cut} ${valuesNote(question, labelling)}`,
      wiring: { ...wiringOf(question, labelling, wanted) },
      beside: others.map(([each, pickup]) => humBeside(found, main!, each, words.get(each)!, pickup)),
    },
    guard: chosen.guard,
  };
}
