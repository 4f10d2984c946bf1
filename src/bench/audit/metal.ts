import type { AuditContext, State } from "./context.ts";
import { liveNets } from "./controls/idle-controls.ts";
import { type Finding, finding } from "./finding.ts";
import type { FindingCode, Severity } from "./finding-codes.ts";
import { earthyLugs } from "./jack.ts";

/** A piece of metal that belongs on ground, and what else hangs on it. */
export interface Metal {
  readonly lug: string;
  /** Lugs of the circuit proper on the same net by wires: cap legs, leads, track lugs. */
  readonly carried: readonly string[];
}

/** The metal at a lug, with what of the circuit hangs on it. */
export function metalAt(context: AuditContext, lug: string): Metal {
  const earthy = new Set(earthyLugs(context.build));
  const carried = context.neighbours(lug).filter(({ name }) => !earthy.has(name));
  return { lug, carried: carried.map(({ name }) => name) };
}

/** States where a lug is not on ground, and among them those where it is on a net that carries signal. */
export function offGround(
  context: AuditContext,
  lug: string,
  states: readonly State[],
): { off: State[]; hot: State[] } {
  const off = states.filter((state) => !context.isGrounded(lug, state));
  return { off, hot: off.filter((state) => liveNets(context, state).has(context.netOf(lug, state))) };
}

/** A resistor or cap straight to ground, as some wire to the strings for safety, grounds as far as hum goes. */
export function groundedThroughPart(context: AuditContext, lug: string): boolean {
  return context.neighbours(lug).some(({ part, local }) => {
    const kind = context.build.parts[part]?.kind;
    if (kind !== "cap" && kind !== "resistor") return false;
    return context.isWiredToGround(`${part}.${local === "a" ? "b" : "a"}`);
  });
}

interface Told {
  readonly message: string;
  readonly remedy: string;
  readonly severity?: Severity;
}

/** A finding about a piece of metal and all that hangs on it. */
export function metalFinding(
  context: AuditContext,
  code: FindingCode,
  { lug, carried }: Metal,
  states: readonly State[],
  told: Told,
): Finding {
  return finding({ code, lugs: [lug, ...carried], settings: context.settingsOf(states), ...told });
}
