import { listed } from "../../english.ts";
import type { AuditContext } from "./context.ts";
import { type Finding, finding } from "./finding.ts";
import { jackUnwired } from "./jack.ts";
import { groundedThroughPart, metalAt, metalFinding, offGround } from "./metal.ts";

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
      return metalFinding(context, "strings-hot", metal, hot, {
        message: `The strings are on the hot side${context.whereElse(hot)}: ${claw} shares a net with ${listed(metal.carried)}.`,
        remedy: `Move the wire of ${claw} to a grounded case, then measure strings to sleeve: about 0 Ω.`,
      });
    }
    if (off.length === 0 || groundedThroughPart(context, claw)) return [];
    return metalFinding(context, "strings-ungrounded", metal, off, {
      message: `${claw} has no ground${context.whereElse(off)}, so the strings have none either.`,
      remedy: `Run a wire from ${claw} to a grounded case, then measure strings to sleeve: about 0 Ω.`,
    });
  });
}
