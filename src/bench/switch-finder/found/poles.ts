import { DisjointSets } from "../../../disjoint-sets.ts";
import { bitCount, bitsOf } from "../heard.ts";
import type { Contacts } from "../known/known-specs.ts";

/** A pole of a contact table, by its lugs. */
export interface Pole {
  readonly lugs: readonly number[];
  /** Lugs that beep with every other of the pole, in more positions than any other does; none of a pole of two lugs. */
  readonly commons: readonly number[];
}

/** How lugs hang together over all positions; a lug that no position joins belongs to no pole. */
export function polesOf(contacts: Contacts, lugs: number): Pole[] {
  const sets = new DisjointSets(lugs);
  for (let a = 0; a < lugs; a++) for (let b = 0; b < a; b++) if (contacts[a * lugs + b] !== 0) sets.join(a, b);
  const { labels, count } = sets.labels();
  const members = Array.from({ length: count }, (_, set) => [...labels.keys()].filter((lug) => labels[lug] === set));
  return members.filter((all) => all.length > 1).map((all) => ({ lugs: all, commons: commonsOf(contacts, lugs, all) }));
}

function commonsOf(contacts: Contacts, lugs: number, pole: readonly number[]): number[] {
  if (pole.length === 2) return [];
  const joinedIn = (lug: number) => pole.reduce((mask, other) => mask | contacts[lug * lugs + other]!, 0);
  const meetsAll = pole.filter((lug) => pole.every((other) => other === lug || contacts[lug * lugs + other] !== 0));
  const most = Math.max(0, ...meetsAll.map((lug) => bitCount(joinedIn(lug))));
  return meetsAll.filter((lug) => bitCount(joinedIn(lug)) === most);
}

/** The groups of joined lugs, position by position, each of two lugs and more. */
export function groupsOf(contacts: Contacts, lugs: number, positions: number): number[][][] {
  return Array.from({ length: positions }, (_, bit) => {
    const sets = new DisjointSets(lugs);
    for (let a = 0; a < lugs; a++)
      for (let b = 0; b < a; b++) if ((contacts[a * lugs + b]! >> bit) & 1) sets.join(a, b);
    const { labels, count } = sets.labels();
    const groups = Array.from({ length: count }, (_, set) => [...labels.keys()].filter((lug) => labels[lug] === set));
    return groups.filter((group) => group.length > 1);
  });
}

/** In which positions two lugs are joined, from 1. */
export const positionsOf = (mask: number): number[] => bitsOf(mask).map((bit) => bit + 1);
