import { hasCoilLeads } from "../../build-file/lug-names.ts";
import type { PickupInput } from "../../build-file/plans/plan-pickups.ts";
import type { BuildInput } from "../../build-file/schema.ts";
import { putPickup } from "../../build-file/swap/swap-pickup.ts";
import { endsOf } from "../../build-file/swap/wired-together.ts";
import { coilNames } from "./coil-names.ts";
import { type Hookup, hookupsOf, metalIsHot, type Wanted } from "./hookups.ts";
import { ohmsOfCoils } from "./ohms-at-20.ts";
import { type OwnCoil, ownType } from "./own-type.ts";
import type { Question } from "./question.ts";
import { type End, isFinish } from "./structure.ts";
import type { Labelling } from "./weigh.ts";
import { leadsAt, poleOf, together } from "./words.ts";

type WireInput = BuildInput["wires"][number];

function ownCoils(question: Question, labelling: Labelling): OwnCoil[] {
  const { structure, magnets } = labelling;
  const ohms = ohmsOfCoils(labelling, question.temperature);
  return coilNames(question.rows, structure.coils).map((name, coil) => ({
    name,
    ohms: ohms[coil]!,
    winding: "forward",
    magnet: poleOf(magnets, coil),
  }));
}

/** Metal as a build file calls it; what sort it is nobody measured. */
const metalOf = ({ structure }: Labelling) => (structure.metalAt >= 0 ? ({ metal: "cover" } as const) : {});

/** The metal soldered to one of the pickup's leads inside, in place of a way to ground of its own. */
function withTiedMetal(guard: BuildInput, name: string, lug: string): BuildInput {
  const shield = `${name}.shield`;
  const wires = guard.wires.filter((wire) => !endsOf(wire).includes(shield));
  return { ...guard, wires: [...wires, { from: shield, to: lug, how: "inside" }] };
}

function placeOf(question: Question, { places }: Labelling, lead: string | undefined): number {
  return lead === undefined ? -1 : places[question.leads.indexOf(lead)]!;
}

function single(question: Question, labelling: Labelling, guard: BuildInput, name: string, hookup: Hookup): BuildInput {
  const [coil] = ownCoils(question, labelling);
  const hot = placeOf(question, labelling, hookup.hot[0]);
  const winding = isFinish(labelling.structure.places[hot]!.ends[0]!) ? "forward" : "reverse";
  return putPickup(guard, name, ownType([{ ...coil!, winding }], metalOf(labelling)), { isTurned: false });
}

function apart(question: Question, labelling: Labelling, guard: BuildInput, name: string, wanted: Wanted): BuildInput {
  const coils = ownCoils(question, labelling);
  const type = ownType(coils, { conductors: 4, ...metalOf(labelling) });
  // A turned hookup by leads keeps coils in order from hot to ground, each the other way round.
  const part = putPickup(guard, name, type, { hotCoil: coils[wanted.upper]!.name, isTurned: false });
  if (!wanted.isTurned) return part;
  const swapped = new Map(
    coils.flatMap(({ name: coil }) => [
      [`${name}.${coil}.start`, `${name}.${coil}.finish`] as const,
      [`${name}.${coil}.finish`, `${name}.${coil}.start`] as const,
    ]),
  );
  return { ...part, wires: part.wires.map((wire) => renamed(wire, swapped)) };
}

function renamed(wire: WireInput, names: ReadonlyMap<string, string>): WireInput {
  const [from, to] = endsOf(wire).map((end) => names.get(end) ?? end) as [string, string];
  return "from" in wire ? { ...wire, from, to } : [from, to];
}

/** Coils that the maker joined: as the two-lead pickup that the build file knows, or with their joints told as wires inside. */
function joined(question: Question, labelling: Labelling, guard: BuildInput, name: string, hookup: Hookup): BuildInput {
  const { structure, places } = labelling;
  const ground = placeOf(question, labelling, hookup.ground[0]);
  const hot = placeOf(question, labelling, hookup.hot[0]);
  const endAt = (place: number) => structure.places[place]!.ends[0]!;
  const coils = ownCoils(question, labelling);
  const joint = structure.places.findIndex(({ ends }) => ends.length === 2);
  const isTapped = leadsAt(question, places, joint).length > 0;
  if (structure.arrangement === "series" && hookup.cancelsHum && !isTapped) {
    const first = endAt(ground) >> 1;
    const winding = isFinish(endAt(ground)) ? "reverse" : "forward";
    const inOrder = [coils[first]!, coils[1 - first]!].map((coil): OwnCoil => ({ ...coil, winding }));
    return putPickup(guard, name, ownType(inOrder, { conductors: 2, ...metalOf(labelling) }), { isTurned: false });
  }
  const type = ownType(coils, { conductors: 2, ...metalOf(labelling) });
  const put = putPickup(guard, name, type, { isTurned: false });
  const lugOf = (end: End) => `${name}.${coils[end >> 1]!.name}.${isFinish(end) ? "finish" : "start"}`;
  const names = new Map([
    [`${name}.hot`, lugOf(endAt(hot))],
    [`${name}.ground`, lugOf(endAt(ground))],
  ]);
  const inside = structure.places.flatMap(({ ends }): WireInput[] =>
    ends.length === 2 ? [{ from: lugOf(ends[0]!), to: lugOf(ends[1]!), how: "inside" }] : [],
  );
  const part = { ...put.parts[name]!, conductors: 4 } as BuildInput["parts"][string];
  return {
    ...put,
    parts: { ...put.parts, [name]: part },
    wires: [...put.wires.map((wire) => renamed(wire, names)), ...inside],
  };
}

function tiedLug(question: Question, labelling: Labelling, guard: BuildInput, name: string, hookup: Hookup): string {
  const { structure } = labelling;
  const end = structure.places[structure.metalAt]!.ends[0]!;
  const part = guard.parts[name]!;
  if (part.kind !== "pickup" || (Object.keys(part.coils).length === 2 && part.conductors !== 2)) {
    const coil = coilNames(question.rows, structure.coils)[end >> 1]!;
    return `${name}.${coil}.${isFinish(end) ? "finish" : "start"}`;
  }
  const isHot = leadsAt(question, labelling.places, structure.metalAt).some((lead) => hookup.hot.includes(lead));
  return `${name}.${isHot ? "hot" : "ground"}`;
}

/** By lug: the leads that are there, as the person calls them. A lead at the coils' joint is told once. */
function leadNames(
  question: Question,
  labelling: Labelling,
  part: PickupInput,
  hookup: Hookup,
): Record<string, string> {
  const { structure, places } = labelling;
  const names = coilNames(question.rows, structure.coils);
  const lugOf = (place: number, [end]: readonly End[]): string => {
    if (end === undefined) return "shield";
    if (hasCoilLeads(part)) return `${names[end >> 1]}.${isFinish(end) ? "finish" : "start"}`;
    return leadsAt(question, places, place).some((lead) => hookup.hot.includes(lead)) ? "hot" : "ground";
  };
  return Object.fromEntries(
    structure.places.flatMap(({ ends }, place) => {
      const leads = leadsAt(question, places, place);
      return leads.length > 0 ? [[lugOf(place, ends), together(leads)]] : [];
    }),
  );
}

function withLeadNames(
  question: Question,
  labelling: Labelling,
  guard: BuildInput,
  name: string,
  hookup: Hookup,
): BuildInput {
  const part = guard.parts[name] as PickupInput;
  const leads = leadNames(question, labelling, part, hookup);
  return { ...guard, parts: { ...guard.parts, [name]: { ...part, leads } } };
}

/**
 * A guard with the pickup in the place of the one called `name`, wired as its main hookup says.
 * @returns undefined where the pickup cannot be wired whole
 */
export function putIntoGuard(
  question: Question,
  labelling: Labelling,
  guard: BuildInput,
  name: string,
  wanted: Wanted,
): BuildInput | undefined {
  const [hookup] = hookupsOf(question, labelling, wanted);
  if (!hookup || hookup.name === "one coil of two") return undefined;
  const { structure } = labelling;
  const bare =
    structure.arrangement === "one"
      ? single(question, labelling, guard, name, hookup)
      : structure.arrangement === "apart"
        ? apart(question, labelling, guard, name, wanted)
        : joined(question, labelling, guard, name, hookup);
  const put = withLeadNames(question, labelling, bare, name, hookup);
  const isTied = structure.metalAt >= 0 && structure.places[structure.metalAt]!.ends.length > 0;
  // Metal that would be hot is told to be cut free, and then goes to ground by a wire of its own, as it does already.
  return isTied && !metalIsHot(question, labelling, hookup)
    ? withTiedMetal(put, name, tiedLug(question, labelling, put, name, hookup))
    : put;
}
