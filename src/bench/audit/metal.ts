import type { AuditContext, State } from "./context.ts";
import { type Finding, type FindingCode, finding } from "./finding.ts";
import { liveNets } from "./idle-controls.ts";
import { earthyLugs, jackUnwired } from "./jack.ts";
import { listed } from "./states.ts";

/** A piece of metal that belongs on ground, and what else hangs on it. */
interface Metal {
  readonly lug: string;
  /** Lugs of the circuit proper on the same net by wires: cap legs, leads, track lugs. */
  readonly carried: readonly string[];
}

function metalAt(context: AuditContext, lug: string): Metal {
  const earthy = new Set(earthyLugs(context.build));
  const carried = context.neighbours(lug).filter(({ name }) => !earthy.has(name));
  return { lug, carried: carried.map(({ name }) => name) };
}

/** States where a lug is not on ground, and among them those where it is on a net that carries signal. */
function offGround(context: AuditContext, lug: string, states: readonly State[]): { off: State[]; hot: State[] } {
  const off = states.filter((state) => !context.isGrounded(lug, state));
  return { off, hot: off.filter((state) => liveNets(context, state).has(context.netOf(lug, state))) };
}

/** A resistor or cap straight to ground, as some wire to the strings for safety, grounds as far as hum goes. */
function groundedThroughPart(context: AuditContext, lug: string): boolean {
  return context.neighbours(lug).some(({ part, local }) => {
    const kind = context.build.parts[part]?.kind;
    if (kind !== "cap" && kind !== "resistor") return false;
    return context.isWiredToGround(`${part}.${local === "a" ? "b" : "a"}`);
  });
}

function report(code: FindingCode, context: AuditContext, { lug, carried }: Metal, states: readonly State[]) {
  const settings = context.settingsOf(states);
  return (message: string, remedy: string, severity?: Finding["severity"]) =>
    finding({ code, lugs: [lug, ...carried], settings, message, remedy, ...(severity ? { severity } : {}) });
}

/** Cases of pots that are not on ground. */
export function potCases(context: AuditContext): Finding[] {
  if (jackUnwired(context).length > 0) return [];
  return context.partsOf("pot").flatMap(([name]) => {
    const metal = metalAt(context, `${name}.case`);
    const { off, hot } = offGround(context, metal.lug, context.states);
    if (off.length === 0) return [];
    if (hot.length > 0 && metal.carried.some((lug) => isLiveLug(context, lug, hot))) {
      return report(
        "case-hot",
        context,
        metal,
        hot,
      )(
        `The case of ${name} is on the hot side${context.whereElse(hot)}: it shares a net with ${listed(metal.carried)}.`,
        "Take the hot wire off the case, then ground the case.",
      );
    }
    const carries = metal.carried.length > 0;
    return report(
      "case-ungrounded",
      context,
      metal,
      off,
    )(
      carries
        ? `The case of ${name} has no ground${context.whereElse(off)}, and ${listed(metal.carried)} relies on it.`
        : `The case of ${name} has no ground.`,
      `Run a wire from the case of ${name} to a grounded case; do not trust the shielding foil for it.`,
      carries ? "fault" : "warning",
    );
  });
}

function isLiveLug(context: AuditContext, lug: string, states: readonly State[]): boolean {
  return states.some((state) => liveNets(context, state).has(context.netOf(lug, state)));
}

/** Claw or bridge wire, and the note where none is given. */
export function strings(context: AuditContext): Finding[] {
  const claws = context.partsOf("terminal").filter(([, { role }]) => role === "claw");
  if (claws.length === 0) {
    return [
      finding({
        code: "strings-not-shown",
        lugs: [`${context.jack}.sleeve`],
        message: "No claw or bridge wire is given, so the strings' ground is not checked.",
        remedy: "After assembly measure from the strings to the jack's sleeve: about 0 Ω.",
      }),
    ];
  }
  if (jackUnwired(context).length > 0) return [];
  return claws.flatMap(([claw]) => {
    const metal = metalAt(context, claw);
    const { off, hot } = offGround(context, claw, context.states);
    if (hot.length > 0) {
      return report(
        "strings-hot",
        context,
        metal,
        hot,
      )(
        `The strings are on the hot side${context.whereElse(hot)}: ${claw} shares a net with ${listed(metal.carried)}.`,
        `Move the wire of ${claw} to a grounded case, then measure strings to sleeve: about 0 Ω.`,
      );
    }
    if (off.length === 0 || groundedThroughPart(context, claw)) return [];
    return report(
      "strings-ungrounded",
      context,
      metal,
      off,
    )(
      `${claw} has no ground${context.whereElse(off)}, so the strings have none either.`,
      `Run a wire from ${claw} to a grounded case, then measure strings to sleeve: about 0 Ω.`,
    );
  });
}

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
      return report(
        "shield-hot",
        context,
        metal,
        bites,
      )(
        `${what} is on the hot side${context.whereElse(bites)}: it shares a net with ${listed(metal.carried)}.`,
        "Cut the jumper from the cover or baseplate to the pickup's lead, and run it to ground on its own wire.",
      );
    }
    if (off.length === 0 || groundedThroughPart(context, lug)) return [];
    const bites = everywhereIfWired(context, off, states);
    return report(
      "shield-floating",
      context,
      metal,
      bites,
    )(`${what} has no ground${context.whereElse(bites)}.`, `Run ${lug} to a grounded case.`);
  });
}
