import { bitCount, bitsOf, type Heard } from "../heard.ts";

/** A family of contact tables: so many poles, each a common that is joined to one throw of its own in each position. */
export interface StarFamily {
  readonly poles: number;
  readonly throws: number;
}

/** A pole of which some contact was heard. */
export interface Star {
  /** Its common; or, of a single contact, the two lugs that may be it. */
  readonly ends: readonly number[];
  /** The throws heard, by position from 0; of a single contact `ends` without the common. */
  readonly contacts: readonly { readonly position: number; readonly a: number; readonly b: number }[];
  /** Bits of the positions whose throw is not known yet. */
  readonly open: number;
}

export interface StarState {
  readonly family: StarFamily;
  readonly stars: readonly Star[];
  /** Lugs without any contact yet. */
  readonly loose: readonly number[];
  /** Poles of which nothing was heard yet. */
  readonly unheard: number;
}

interface Contact {
  readonly a: number;
  readonly b: number;
  readonly position: number;
}

/** Undefined where a pair beeps in several positions, which no star's does. */
function contactsIn(heard: Heard): Contact[] | undefined {
  const contacts: Contact[] = [];
  for (let a = 0; a < heard.lugs; a++)
    for (let b = a + 1; b < heard.lugs; b++) {
      const on = heard.on[a * heard.lugs + b]!;
      if (on === 0) continue;
      if (bitCount(on) > 1) return undefined;
      contacts.push({ a, b, position: bitsOf(on)[0]! });
    }
  return contacts;
}

/** Contacts that share a lug with each other, first come first. */
function grouped(contacts: readonly Contact[]): Contact[][] {
  const groups: Contact[][] = [];
  for (const contact of contacts) {
    const meets = (group: readonly Contact[]) =>
      group.some(({ a, b }) => a === contact.a || a === contact.b || b === contact.a || b === contact.b);
    const near = groups.filter(meets);
    for (const group of near) groups.splice(groups.indexOf(group), 1);
    groups.push([...near.flat(), contact]);
  }
  return groups;
}

function starOf(contacts: readonly Contact[], all: number): Star | undefined {
  const [first, ...rest] = contacts;
  const ends = [first!.a, first!.b].filter((lug) => rest.every(({ a, b }) => a === lug || b === lug));
  const taken = contacts.reduce((mask, { position }) => mask | (1 << position), 0);
  if (ends.length === 0 || bitCount(taken) !== contacts.length) return undefined;
  return { ends, contacts, open: all & ~taken };
}

/** What the beeps make of a family of stars; undefined where they fit none of it. */
export function starState(heard: Heard, family: StarFamily): StarState | undefined {
  const contacts = contactsIn(heard);
  if (!contacts || contacts.length > family.poles * family.throws) return undefined;
  const stars = grouped(contacts).map((group) => starOf(group, heard.all));
  if (stars.length > family.poles || stars.some((star) => star === undefined)) return undefined;
  const bound = new Set(contacts.flatMap(({ a, b }) => [a, b]));
  const loose = Array.from({ length: heard.lugs }, (_, lug) => lug).filter((lug) => !bound.has(lug));
  return { family, stars: stars as Star[], loose, unheard: family.poles - stars.length };
}

/** Whether a lug may still be a throw of a pole at one of the open positions. */
export function mayJoin(heard: Heard, lug: number, common: number, open: number): boolean {
  return (open & ~heard.off[common * heard.lugs + lug]!) !== 0;
}
