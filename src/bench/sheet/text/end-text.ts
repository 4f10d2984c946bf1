import type { JointEnd } from "../order/joints.ts";
import type { Piece } from "../pieces/piece.ts";
import type { CutWire } from "../wire/cut-list.ts";

const millimetres = (metres: number) => `${Math.round(metres * 1000)} mm`;

/** How a piece is called once it is cut: "white wire 7". */
export function wireName({ means, number }: Pick<Piece, "means" | "number">, cut: CutWire | undefined): string {
  const thing = means === "bus wire" || means === "braid" || means === "jumper" ? means : "wire";
  const colour = cut && cut.colour !== "bare" ? `${cut.colour} ` : "";
  return `${cut?.kind === "bare" && means !== "bus wire" ? "bare " : colour}${thing} ${number}`;
}

function onward(onTo: string | undefined, cut: CutWire | undefined): string {
  if (onTo === undefined) return "";
  return cut ? `, bare ${millimetres(cut.strips[1])} and on to ${onTo}` : `, through and on to ${onTo}`;
}

interface SaidEnd extends JointEnd {
  /** Whether its other end is not soldered yet. */
  readonly hangs: boolean;
}

/** One thing that meets a joint, in words. */
export function endText({ piece, from, onTo, comesOn, hangs }: SaidEnd, cut: CutWire | undefined): string {
  switch (piece.means) {
    case "bent lug":
      return `the bent lug (${from})`;
    case "lead":
      // A shield's own end is bare: a drain that comes with the cable, or a braid.
      return from.endsWith(".shield") ? `the bare drain ${from}, sleeved` : `the lead ${from}`;
    case "leg":
      return comesOn
        ? `the leg of ${piece.stops[0]} that comes on from ${from}`
        : `the leg of ${from}${onward(onTo, undefined)}`;
    default: {
      const name = wireName(piece, cut);
      return comesOn
        ? `the bared end of ${name}, on from ${from}`
        : `${name} ${hangs ? "for" : "from"} ${from}${onward(onTo, cut)}`;
    }
  }
}
