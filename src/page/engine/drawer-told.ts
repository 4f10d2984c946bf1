import "./zod-without-eval.ts";
import { describePart } from "../../bench/parts/describe-part.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import { faultsOf } from "../../build-file/zod-tools.ts";
import { type Drawer, drawerSchema } from "../../drawer/drawer-schema.ts";
import { type MatchedNeed, matchGuards } from "../../drawer/match.ts";
import type { Piece } from "../../drawer/pieces.ts";
import { PresolderError } from "../../errors.ts";
import { countedBy } from "./counted-by.ts";
import type { DrawerAsked, DrawerReply, DrawerTold, GuardAsked, GuardTold, NeedTold } from "./drawer-answer.ts";
import { shoppingFor } from "./shopping-told.ts";

function buildOf(file: string): Build | string {
  try {
    return readBuild(JSON.parse(file));
  } catch (error) {
    if (error instanceof PresolderError || error instanceof SyntaxError) return error.message;
    throw error;
  }
}

function linesOf(matched: readonly MatchedNeed[], names: readonly string[]): NeedTold[] {
  return countedBy(matched, ({ need }) => describePart(need.part).what).map(({ of }) => ({
    ...describePart(of[0]!.need.part),
    wanted: of.length,
    there: of.filter(({ piece }) => piece).length,
    heldBy: [...new Set(of.flatMap(({ heldBy }) => heldBy))].map((guard) => names[guard]!),
  }));
}

/** A guard that can be read, with what of it there is. */
interface Matched extends GuardAsked {
  readonly build: Build;
  readonly needs: readonly MatchedNeed[];
}

function itemsTold({ items }: Drawer, matched: readonly Matched[]): DrawerTold["items"] {
  const soldered = matched.flatMap(({ isSoldered, needs }) => (isSoldered ? needs : []));
  return items.map(({ part }, item) => ({
    ...describePart(part),
    soldered: soldered.filter(({ piece }) => piece && "item" in piece.source && piece.source.item === item).length,
  }));
}

function kitsTold({ kits }: Drawer): DrawerTold["kits"] {
  return kits.map(({ content }) => ({
    content: content.map(({ part, count }) => ({ what: describePart(part).what, count })),
  }));
}

/** What is shopped for: guards on the list whose parts are in no guitar yet. */
function shoppingTold(drawer: Drawer, free: readonly Piece[], matched: readonly Matched[]): DrawerTold["shopping"] {
  const listed = matched.filter(({ isOnList, isSoldered }) => isOnList && !isSoldered);
  if (listed.length === 0) return null;
  const needs = listed.flatMap((guard) => guard.needs.map(({ need }) => need));
  const names = matched.map(({ name }) => name);
  return shoppingFor(
    needs,
    free,
    drawer,
    names,
    listed.map(({ build }) => build),
  );
}

function guardTold({ name, isSoldered, needs }: Matched, names: readonly string[]): GuardTold {
  const missing = needs.filter(({ piece }) => !piece).length;
  return { name, isSoldered, lines: linesOf(needs, names), wanted: needs.length, missing, fault: "" };
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
  const { free, guards: needs } = matchGuards(drawer, readable);
  const matched = readable.map((guard, index): Matched => ({ ...guard, needs: needs[index]! }));
  const names = matched.map(({ name }) => name);
  let at = 0;
  return {
    told: {
      items: itemsTold(drawer, matched),
      kits: kitsTold(drawer),
      guards: guards.map(({ name, isSoldered }, index): GuardTold => {
        const build = builds[index]!;
        if (typeof build === "string") return { name, isSoldered, lines: [], wanted: 0, missing: 0, fault: build };
        return guardTold(matched[at++]!, names);
      }),
      shopping: shoppingTold(drawer, free, matched),
    },
  };
}
