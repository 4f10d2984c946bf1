import type { Part, PartOf, Pot } from "../schema.ts";
import type { BodyKind } from "./body-kind.ts";
import type { JackBody, PotBody, ShaftBody, SwitchBody } from "./body-names.ts";

const kind = <Name extends string>(name: Name, title: string, lugs: string, checkByMeter = false): BodyKind<Name> => ({
  name,
  title,
  lugs,
  checkByMeter,
});

const IN_LINE_MIRRORED = kind<SwitchBody>(
  "in-line-mirrored",
  "enclosed, eight lugs in line, mirrored",
  "The two commons are at the ends, the poles each other's mirror image.",
  true,
);
const IN_LINE_ALIKE = kind<SwitchBody>(
  "in-line-alike",
  "enclosed, eight lugs in line, alike",
  "Both poles in the same order, one after the other.",
  true,
);
const OPEN_FRAME = kind<SwitchBody>(
  "open-frame",
  "open frame",
  "A pole on either side, the two commons at opposite ends; the wiper runs against the lever's tip, so that the neck's lug is at the bridge end.",
  true,
);
const BOARD = kind<SwitchBody>("board", "board with four poles", "A row a pole, commons at either end by turns.", true);
const TOGGLE_FRAME = kind<SwitchBody>(
  "open-frame",
  "open frame with leaves",
  "The common between the two ways; the frame has a lug of its own, for ground.",
);
const TOGGLE_BOX = kind<SwitchBody>(
  "box",
  "closed box",
  "Three lugs in line, the common in the middle; ground on the tag under the nut.",
);
const MINI_TOGGLE = kind<SwitchBody>(
  "mini-toggle",
  "mini toggle",
  "A column a pole, its common in the middle; most close the lugs away from the bat.",
  true,
);
const SLIDE = kind<SwitchBody>("slide", "slide switch", "A row a pole, its common in the middle.", true);
const RING = kind<SwitchBody>("ring", "rotary wafer", "Throws on the outer ring, commons on the inner.", true);
const BLOCK = kind<SwitchBody>("block", "as its lugs are named", "A row for each letter that lugs begin with.", true);

const AS_FOUND = kind<SwitchBody>("block", "as found", "The lugs sit where they were found.");

const LEVERS = [OPEN_FRAME, IN_LINE_MIRRORED, IN_LINE_ALIKE] as const;

/** The first of each is what is taken where a build file says none. */
const BY_TYPE = {
  "lever-3": LEVERS,
  "lever-5": LEVERS,
  "lever-5-four-pole": [BOARD],
  "toggle-3": [TOGGLE_FRAME, TOGGLE_BOX],
  spdt: [MINI_TOGGLE, SLIDE],
  dpdt: [MINI_TOGGLE, SLIDE],
  "dpdt-on-on-on": [MINI_TOGGLE],
  rotary: [RING],
} as const satisfies Record<NonNullable<PartOf<"switch">["type"]>, readonly BodyKind<SwitchBody>[]>;

const POTS: readonly BodyKind<PotBody>[] = [
  kind("full-size", "full size, 24 mm case", "From the back, lugs down: 3, 2, 1."),
  kind("mini", "mini, 16 mm case", "From the back, lugs down: 3, 2, 1, closer together."),
];
const PUSH_PULLS: readonly BodyKind<PotBody>[] = [POTS[1]!, POTS[0]!];
const STACKED: readonly BodyKind<PotBody>[] = [
  kind("stacked", "stacked, 24 mm cases", "The second track's lugs stand above the first's, in the same order."),
  kind("stacked-mini", "stacked, 16 mm cases", "The second track's lugs stand above the first's, in the same order."),
];

const SHAFTS: readonly BodyKind<ShaftBody>[] = [
  kind("columns", "a pole a column", "Behind the pot's own lugs; each pole's common in the middle row.", true),
  kind("rows", "a pole a row", "Behind the pot's own lugs; each pole's common in the middle column.", true),
];

const JACKS: readonly BodyKind<JackBody>[] = [
  kind("open", "open, with leaves", "The sleeve's lug is on the ring about the bush, the tip's on the leaf."),
  kind("barrel", "closed barrel", "The lugs stand at the barrel's end.", true),
  kind("box", "closed box", "The lugs stand in line at the box's edge.", true),
];

export function potBodies(pot: Pot): readonly BodyKind<PotBody>[] {
  if (pot.gangs) return STACKED;
  return pot.drives ? PUSH_PULLS : POTS;
}

export function switchBodies(part: PartOf<"switch">): readonly BodyKind<SwitchBody>[] {
  if (part.lugRows) return [AS_FOUND];
  return part.positions || part.type === undefined ? [BLOCK] : BY_TYPE[part.type];
}

/** The bodies that a part can have, the usual one first; none where a part of its kind has no choice. */
export function bodiesOf(part: Part): readonly BodyKind[] {
  switch (part.kind) {
    case "pot":
      return potBodies(part);
    case "switch":
      return switchBodies(part);
    case "jack":
      return JACKS;
    default:
      return [];
  }
}

/** How the lugs of the switch on a pot's shaft can lie; none without one. */
export function shaftBodiesOf(part: Part): readonly BodyKind<ShaftBody>[] {
  return part.kind === "pot" && part.drives ? SHAFTS : [];
}

const bodyIn = <Name extends string>(bodies: readonly BodyKind<Name>[], said: string | undefined): BodyKind<Name> =>
  bodies.find(({ name }) => name === said) ?? bodies[0]!;

export const potBody = (pot: Pot): PotBody => bodyIn(potBodies(pot), pot.body).name;
export const shaftBody = (pot: Pot): ShaftBody => bodyIn(SHAFTS, pot.drives?.body).name;
export const switchBody = (part: PartOf<"switch">): SwitchBody => bodyIn(switchBodies(part), part.body).name;
export const jackBody = (part: PartOf<"jack">): JackBody => bodyIn(JACKS, part.body).name;
