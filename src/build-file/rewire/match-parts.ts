import { LugTable } from "../lugs.ts";
import type { Build, Part } from "../schema.ts";
import { isSamePart, roleOf, valueDistance } from "./same-part.ts";

/** Names of `to` against names of `from`. */
export interface PartMatch {
  /** Parts that stay, wherever their wires go. */
  readonly stays: ReadonlyMap<string, string>;
  /** Parts that come in, with the part that goes out for them. */
  readonly replaces: ReadonlyMap<string, string>;
}

/** "part:index" of both lugs of every wire, from either end. */
function neighbours(build: Build): Map<string, string[]> {
  const table = new LugTable(build.parts);
  const keyOf = (name: string) => {
    const { part, local } = table.lugs[table.indexOf(name)]!;
    return { part, key: `${part}:${[...table.lugsOf(part).keys()].indexOf(local)}` };
  };
  const found = new Map<string, string[]>();
  for (const wire of build.wires) {
    const [a, b] = [keyOf(wire.from), keyOf(wire.to)];
    for (const [own, other] of [[a, b] as const, [b, a] as const])
      found.set(own.part, [...(found.get(own.part) ?? []), `${own.key.slice(own.part.length)} ${other.key}`]);
  }
  return found;
}

/** A part without a role of its own is a thing apart: one terminal does not stand for another. */
function canStandFor(old: Part, wanted: Part): boolean {
  if (wanted.kind !== "terminal") return true;
  const role = roleOf(wanted);
  return role !== undefined && role !== "other" && role === roleOf(old);
}

class PartMatcher {
  readonly stays = new Map<string, string>();
  readonly replaces = new Map<string, string>();
  readonly #taken = new Set<string>();
  readonly #from: Build;
  readonly #to: Build;

  constructor(from: Build, to: Build) {
    this.#from = from;
    this.#to = to;
  }

  match(): PartMatch {
    for (const [name, part] of this.#open()) {
      const old = Object.hasOwn(this.#from.parts, name) ? this.#from.parts[name] : undefined;
      if (old && isSamePart(old, part)) this.#take(this.stays, name, name);
    }
    this.#matchOtherNames();
    for (const [name, part] of this.#open()) {
      const old = Object.hasOwn(this.#from.parts, name) ? this.#from.parts[name] : undefined;
      if (old?.kind === part.kind && !this.#taken.has(name)) this.#take(this.replaces, name, name);
    }
    for (const [name, part] of this.#open()) {
      const [best] = this.#candidates(part).sort(
        ([, a], [, b]) => sameRole(b, part) - sameRole(a, part) || valueDistance(a, part) - valueDistance(b, part),
      );
      if (best) this.#take(this.replaces, name, best[0]);
    }
    return this;
  }

  /** Parts as good as wanted, under another name: of the same role and with the most wires where they are wanted. */
  #matchOtherNames(): void {
    const [found, wanted] = [neighbours(this.#from), neighbours(this.#to)];
    const renamed = (pair: string) => {
      const [own, other = ""] = pair.split(" ");
      const [part = "", index] = other.split(":");
      return `${own} ${this.stays.get(part) ?? ""}:${index}`;
    };
    for (const [name, part] of this.#open()) {
      const shared = (old: string) => {
        const there = new Set(found.get(old));
        return (wanted.get(name) ?? []).filter((pair) => there.has(renamed(pair))).length;
      };
      const [best] = this.#candidates(part)
        .filter(([, old]) => isSamePart(old, part))
        .sort(([a, oldA], [b, oldB]) => sameRole(oldB, part) - sameRole(oldA, part) || shared(b) - shared(a));
      if (best) this.#take(this.stays, name, best[0]);
    }
  }

  /** Parts of `to` that nothing was found for yet. */
  #open(): [string, Part][] {
    return Object.entries(this.#to.parts).filter(([name]) => !this.stays.has(name) && !this.replaces.has(name));
  }

  #candidates(wanted: Part): [string, Part][] {
    return Object.entries(this.#from.parts).filter(
      ([name, old]) => !this.#taken.has(name) && old.kind === wanted.kind && canStandFor(old, wanted),
    );
  }

  #take(matches: Map<string, string>, name: string, old: string): void {
    matches.set(name, old);
    this.#taken.add(old);
  }
}

function sameRole(a: Part, b: Part): number {
  return roleOf(a) === roleOf(b) ? 1 : 0;
}

/** Which part of the guard as found serves as which part of the guard as wanted: by name first, then by kind, role and value. */
export function matchParts(from: Build, to: Build): PartMatch {
  return new PartMatcher(from, to).match();
}
