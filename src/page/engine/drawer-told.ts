import "./zod-without-eval.ts";
import { type Description, describePart } from "../../bench/parts/describe-part.ts";
import { buildSheet } from "../../bench/sheet/build-sheet.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import { faultsOf } from "../../build-file/zod-tools.ts";
import { type Drawer, type DrawerInput, drawerSchema } from "../../drawer/drawer-schema.ts";
import { type MatchedNeed, matchGuards } from "../../drawer/match.ts";
import type { Need } from "../../drawer/needs.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { shoppingList } from "../../drawer/shopping.ts";
import { checkWire, type WireCheck, type WireWanted } from "../../drawer/wire-lengths.ts";
import { type InputFault, PresolderError } from "../../errors.ts";

export interface GuardAsked {
  readonly name: string;
  /** The build file's text. */
  readonly file: string;
  /** Whether its parts are soldered in and counted in the drawer. */
  readonly isSoldered: boolean;
  readonly isOnList: boolean;
}

export interface DrawerAsked {
  readonly drawer: DrawerInput;
  readonly guards: readonly GuardAsked[];
}

/** Parts alike that a guard takes. */
export interface NeedTold extends Description {
  readonly wanted: number;
  readonly there: number;
  /** Guards that hold one that would serve. */
  readonly heldBy: readonly string[];
}

export interface GuardTold {
  readonly name: string;
  readonly isSoldered: boolean;
  readonly lines: readonly NeedTold[];
  readonly wanted: number;
  readonly missing: number;
  /** Why it cannot be read; empty where it can. */
  readonly fault: string;
}

export interface ShoppingLine {
  readonly what: string;
  readonly code: string | null;
  readonly count: number;
  /** Of one; null where none is known. */
  readonly price: number | null;
  readonly guards: readonly string[];
}

export interface ShoppingTold {
  readonly lines: readonly ShoppingLine[];
  readonly total: number;
  readonly isCheapest: boolean;
  readonly staysOver: readonly { readonly what: string; readonly count: number }[];
  readonly wire: readonly WireCheck[];
}

export interface DrawerTold {
  readonly items: readonly (Description & { readonly soldered: number })[];
  readonly kits: readonly { readonly content: readonly { readonly what: string; readonly count: number }[] }[];
  readonly guards: readonly GuardTold[];
  readonly shopping: ShoppingTold | null;
}

export type DrawerReply = { readonly told: DrawerTold } | { readonly faults: readonly InputFault[] };

function buildOf(file: string): Build | string {
  try {
    return readBuild(JSON.parse(file));
  } catch (error) {
    if (error instanceof PresolderError || error instanceof SyntaxError) return error.message;
    throw error;
  }
}

function countedBy<T>(all: readonly T[], name: (each: T) => string): { what: string; count: number; of: T[] }[] {
  const known = new Map<string, T[]>();
  for (const each of all) known.set(name(each), [...(known.get(name(each)) ?? []), each]);
  return [...known].map(([what, of]) => ({ what, count: of.length, of }));
}

function linesOf(matched: readonly MatchedNeed[], names: readonly string[]): NeedTold[] {
  return countedBy(matched, ({ need }) => describePart(need.part).what).map(({ of }) => ({
    ...describePart(of[0]!.need.part),
    wanted: of.length,
    there: of.filter(({ piece }) => piece).length,
    heldBy: [...new Set(of.flatMap(({ heldBy }) => heldBy))].map((guard) => names[guard]!),
  }));
}

/** Wire that the sheets of these guards cut, by kind and colour. */
function wireOf(builds: readonly Build[]): WireWanted[] {
  const cuts = builds.flatMap((build) => buildSheet(build).cuts);
  return countedBy(cuts, ({ kind, colour }) => `${kind} ${colour}`).map(({ of }) => ({
    kind: of[0]!.kind,
    colour: of[0]!.colour,
    metres: Math.round(of.reduce((sum, { cut }) => sum + cut, 0) * 1000) / 1000,
  }));
}

function shoppingFor(
  needs: readonly Need[],
  free: readonly Piece[],
  drawer: Drawer,
  names: readonly string[],
  builds: readonly Build[],
): ShoppingTold {
  const { purchases, unpriced, total, isCheapest, staysOver } = shoppingList(needs, free, drawer);
  const guardsOf = (served: readonly Need[]) => [...new Set(served.map(({ guard }) => names[guard]!))];
  const bought = purchases.map(({ source, count, price, needs: served }): ShoppingLine => {
    const described =
      "item" in source
        ? describePart(drawer.items[source.item]!.part)
        : { what: `kit: ${drawer.kits[source.kit]!.name}`, code: null };
    return { ...described, count, price, guards: guardsOf(served) };
  });
  const others = countedBy(unpriced, ({ part }) => describePart(part).what).map(
    ({ count, of }): ShoppingLine => ({ ...describePart(of[0]!.part), count, price: null, guards: guardsOf(of) }),
  );
  const over = countedBy(staysOver, ({ part }) => describePart(part).what);
  return {
    lines: [...bought, ...others],
    total,
    isCheapest,
    staysOver: over.map(({ what, count }) => ({ what, count })),
    wire: checkWire(drawer.wires, wireOf(builds)),
  };
}

/** A drawer beside the guards of a shelf: what each has and lacks, and what is to be bought for some of them together. */
export function drawerTold({ drawer: input, guards }: DrawerAsked): DrawerReply {
  const read = drawerSchema.safeParse(input);
  if (!read.success) return { faults: faultsOf(read.error) };
  const drawer = read.data;
  const builds = guards.map(({ file }) => buildOf(file));
  const readable = guards.flatMap((guard, index) => {
    const build = builds[index]!;
    return typeof build === "string" ? [] : [{ ...guard, build }];
  });
  const names = readable.map(({ name }) => name);
  const { free, guards: matched } = matchGuards(drawer, readable);
  const soldered = readable.flatMap(({ isSoldered }, index) => (isSoldered ? matched[index]! : []));
  const listed = readable.flatMap((guard, index) =>
    guard.isOnList && !guard.isSoldered ? [{ ...guard, needs: matched[index]!.map(({ need }) => need) }] : [],
  );
  let at = 0;
  return {
    told: {
      items: drawer.items.map(({ part }, item) => ({
        ...describePart(part),
        soldered: soldered.filter(({ piece }) => piece && "item" in piece.source && piece.source.item === item).length,
      })),
      kits: drawer.kits.map(({ content }) => ({
        content: content.map(({ part, count }) => ({ what: describePart(part).what, count })),
      })),
      guards: guards.map(({ name, isSoldered }, index): GuardTold => {
        const build = builds[index]!;
        if (typeof build === "string") return { name, isSoldered, lines: [], wanted: 0, missing: 0, fault: build };
        const own = matched[at++]!;
        const missing = own.filter(({ piece }) => !piece).length;
        return { name, isSoldered, lines: linesOf(own, names), wanted: own.length, missing, fault: "" };
      }),
      shopping:
        listed.length === 0
          ? null
          : shoppingFor(
              listed.flatMap(({ needs }) => needs),
              free,
              drawer,
              names,
              listed.map(({ build }) => build),
            ),
    },
  };
}
