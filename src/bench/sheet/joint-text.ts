import type { JointKind } from "./joints.ts";

/** One thing that meets a joint. */
export interface Arrival {
  readonly connection: number;
  readonly means: string;
  /** The lug at the connection's other end. */
  readonly other: string;
  /** Of a cut wire. */
  readonly colour?: string;
}

function arrivalText({ means, other, colour }: Arrival): string {
  if (means === "bent lug") return `the bent lug (${other})`;
  if (means === "leg") return `the leg of ${other}`;
  if (means === "lead") return `the lead ${other}`;
  return `${colour ?? "the"} ${means} ${colour === undefined ? "" : "from "}${other}`.replace("  ", " ");
}

/** As many ends as this slip out of place while a case is heated, unless they are one bundle (common practice, no source). */
const BUNDLE_FROM = 4;

/** What to do at a joint, in a sentence. */
export function jointText(kind: JointKind, lugs: readonly string[], arrivals: readonly Arrival[]): string {
  const list = arrivals.map(arrivalText).join(", ");
  const where = lugs.join(" + ");
  switch (kind) {
    case "case": {
      const bundle =
        arrivals.length >= BUNDLE_FROM ? "twist the wires into one bundle, tin it and lay it on the tinned spot; " : "";
      return `${where}: gather ${list}; ${bundle}heat the case once for all of them.`;
    }
    case "splice":
      return `${where}: twist the leads together${arrivals.length > 1 ? ` with ${list}` : ""}, solder, and sleeve the joint.`;
    case "leg":
      return `${where}, at the leg: ${list}.`;
    case "lug":
    case "lead":
      return `${where}: ${list}${arrivals.length > 1 ? "; all in place before heating" : ""}.`;
  }
}
