import type { WantedWish } from "../../contract/wanted.ts";
import type { WishesAnswer } from "../../contract/wishes.ts";

export type Where = WantedWish["where"];
export type Target = WantedWish["asks"][number]["targets"][number];

/** A wish as it is being written. */
export interface WrittenWish {
  where: Where;
  asks: { word: WantedWish["asks"][number]["word"]; targets: Target[] }[];
}

/** What every word is measured by, as the service has it. */
export interface Vocabulary {
  readonly words: WishesAnswer["words"];
  readonly figures: WishesAnswer["figures"];
}

const PICKUPS = ["bridge", "middle", "neck"];
const PAIRS = [
  ["bridge", "middle"],
  ["middle", "neck"],
  ["bridge", "neck"],
];
/** As the largest lever of the guards that are looked through has. */
const MOST_POSITIONS = 5;

/** A place as the value of a choice. */
export function placeKey(where: Where): string {
  switch (where.kind) {
    case "position":
      return `position ${where.position}`;
    case "pickups":
      return where.pickups.join(" + ");
    default:
      return where.kind;
  }
}

export function placeWords(where: Where): string {
  switch (where.kind) {
    case "position":
      return `Position ${where.position}`;
    case "pickups":
      return where.pickups.length === 1 ? `The ${where.pickups[0]} alone` : where.pickups.join(" + ");
    case "everywhere":
      return "Every position";
    case "anywhere":
      return "One position or another";
  }
}

/** Every place that can be chosen; one that was said in words and is none of them besides. */
export function placesFor(own: Where): Where[] {
  const usual: Where[] = [
    ...Array.from({ length: MOST_POSITIONS }, (_, index): Where => ({ kind: "position", position: index + 1 })),
    ...[...PICKUPS.map((name) => [name]), ...PAIRS].map((pickups): Where => ({ kind: "pickups", pickups })),
    { kind: "everywhere" },
    { kind: "anywhere" },
  ];
  return usual.some((where) => placeKey(where) === placeKey(own)) ? usual : [own, ...usual];
}

export function written(wishes: readonly WantedWish[]): WrittenWish[] {
  return wishes.map(({ where, asks }) => ({
    where,
    asks: asks.map(({ word, targets }) => ({ word, targets: targets.map((target) => ({ ...target })) })),
  }));
}
