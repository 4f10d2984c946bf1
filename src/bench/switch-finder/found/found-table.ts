import { listed } from "../../../english.ts";
import type { BodyGuess } from "../bodies/body-guesses.ts";
import type { SwitchQuestion } from "../question.ts";
import type { LikelyTable } from "../search/verdict.ts";
import { groupsOf, type Pole, polesOf } from "./poles.ts";
import { type FoundReading, readingsOf } from "./reading.ts";
import { shortingOf } from "./shorting.ts";
import { specTitle } from "./spec-title.ts";
import { knownPart, ownPart } from "./switch-part.ts";

type Names = readonly string[];

function poleOf({ lugs, commons }: Pole, names: Names) {
  const throws = lugs.filter((lug) => !commons.includes(lug));
  return { commons: commons.map((lug) => names[lug]!), throws: throws.map((lug) => names[lug]!) };
}

function typeOf({ spec, body, reversed, lugs }: FoundReading, names: Names) {
  return {
    type: spec.type ?? null,
    centre: spec.centre ?? null,
    poles: spec.poles ?? null,
    throws: spec.throws ?? null,
    body: body ?? null,
    reversed,
    title: specTitle(spec),
    lugs: Object.fromEntries(lugs.map((lug, found) => [names[found]!, lug])),
  };
}

const isOne = (a: FoundReading, b: FoundReading) =>
  specTitle(a.spec) === specTitle(b.spec) && a.spec.centre === b.spec.centre;

/** The other known switches that are the same contact table: no beeper tells them apart. */
function othersOf([first, ...rest]: readonly FoundReading[]): FoundReading[] {
  return rest.filter((each, index) => !isOne(each, first!) && rest.findIndex((other) => isOne(other, each)) === index);
}

function poleText({ commons, throws }: ReturnType<typeof poleOf>): string {
  if (commons.length === 0) return `${listed(throws)} are joined, neither of them the common`;
  const common = commons.length === 1 ? `${commons[0]} is the common` : `${listed(commons)} are the commons`;
  return `${common}, ${listed(throws)} ${throws.length === 1 ? "its other lug" : "its throws"}`;
}

function textOf(poles: readonly ReturnType<typeof poleOf>[], alone: Names): string {
  const each = poles.map((pole, index) => `${poles.length === 1 ? "" : `Pole ${index + 1}: `}${poleText(pole)}.`);
  const free = alone.length === 0 ? [] : [`${listed(alone)}: joined to nothing in any position.`];
  return [...each, ...free].join(" ");
}

/** A contact table in the person's own names, and the known switches that have it. */
export function foundTable(
  question: SwitchQuestion,
  { contacts, probability }: LikelyTable,
  guesses: readonly BodyGuess[],
) {
  const { lugs, positions } = question;
  const names = lugs.map(({ name }) => name);
  const readings = readingsOf(contacts, lugs.length, positions, guesses);
  const [reading] = readings;
  const poles = polesOf(contacts, lugs.length).map((pole) => poleOf(pole, names));
  const joined = new Set(poles.flatMap((pole) => [...pole.commons, ...pole.throws]));
  return {
    probability,
    known: reading ? typeOf(reading, names) : null,
    others: readings.length > 1 ? othersOf(readings).map((other) => typeOf(other, names)) : [],
    positions: groupsOf(contacts, lugs.length, positions).map((groups) =>
      groups.map((group) => group.map((lug) => names[lug]!)),
    ),
    poles,
    shorting: shortingOf(question, contacts),
    part: (reading ? knownPart(reading, lugs) : ownPart(contacts, lugs, positions)) ?? null,
    text: textOf(
      poles,
      names.filter((name) => !joined.has(name)),
    ),
  };
}

export type FoundTable = ReturnType<typeof foundTable>;
