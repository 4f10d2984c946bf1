import { listed } from "../../english.ts";
import type { AuditContext, State } from "./context.ts";
import type { Finding } from "./finding.ts";
import { jackUnwired } from "./jack.ts";
import { groundedThroughPart, metalAt, metalFinding, offGround } from "./metal.ts";

interface Shield {
  readonly lug: string;
  readonly what: string;
  readonly states: readonly State[];
}

/** Covers, baseplates and braids that are there, with the states where their pickup sounds; foils with every state. */
function shields(context: AuditContext): Shield[] {
  const pickups = context.partsOf("pickup").flatMap(([name, { metal }]): Shield[] => {
    const lug = `${name}.shield`;
    const isThere = metal ? metal !== "none" : context.neighbours(lug).length > 0;
    if (!isThere) return [];
    const sounding = context.alive.filter(({ described }) => described.coils.some(({ pickup }) => pickup === name));
    const what = `The ${metal && metal !== "none" ? metal : "shield"} of ${name}`;
    return [{ lug, what, states: sounding.length > 0 ? sounding : context.states }];
  });
  const foils = context
    .partsOf("terminal")
    .filter(([, { role }]) => role === "shield" || role === "ground")
    .map(([lug]): Shield => ({ lug, what: `The terminal ${lug}`, states: context.states }));
  return [...pickups, ...foils];
}

/** States worth naming: all of them where it is so whatever the switches do. */
function everywhereIfWired(context: AuditContext, states: readonly State[], among: readonly State[]): readonly State[] {
  return states.length === among.length ? context.states : states;
}

/** Shields that float, and shields tied to a lead that is not ground. */
export function shielding(context: AuditContext): Finding[] {
  if (jackUnwired(context).length > 0) return [];
  return shields(context).flatMap(({ lug, what, states }) => {
    const metal = metalAt(context, lug);
    const { off, hot } = offGround(context, lug, states);
    if (hot.length > 0) {
      const bites = everywhereIfWired(context, hot, states);
      return metalFinding(context, "shield-hot", metal, bites, {
        message: `${what} is on the hot side${context.whereElse(bites)}: it shares a net with ${listed(metal.carried)}.`,
        remedy:
          "Cut the jumper from the cover or baseplate to the pickup's lead, and run it to ground on its own wire.",
      });
    }
    if (off.length === 0 || groundedThroughPart(context, lug)) return [];
    const bites = everywhereIfWired(context, off, states);
    return metalFinding(context, "shield-floating", metal, bites, {
      message: `${what} has no ground${context.whereElse(bites)}.`,
      remedy: `Run ${lug} to a grounded case.`,
    });
  });
}
