import type { Checkpoint } from "../../../checkpoint.ts";
import { millimetresText } from "../../../lengths.ts";
import { type Room, roomBetween } from "../geometry/clearance.ts";
import { extentGap } from "../geometry/outline.ts";
import type { Measures } from "../measures.ts";
import type { PlacedPart, PlacedShape } from "../placed-parts.ts";
import { type Clearance, measured } from "./clearance.ts";

interface Meeting extends Room {
  readonly one: PlacedPart;
  readonly other: PlacedPart;
  readonly ones: PlacedShape["what"];
  readonly others: PlacedShape["what"];
}

/** The least room between the shapes of two parts, unless it cannot be less than a known one. */
function meetingOf(one: PlacedPart, other: PlacedPart, known: Meeting | undefined): Meeting | undefined {
  return one.shapes.reduce<Meeting | undefined>(
    (nearest, a) =>
      other.shapes.reduce((least, b) => {
        const atLeast = extentGap(a.outline, b.outline);
        if (least && atLeast > 0 && atLeast >= least.clearance) return least;
        const room = roomBetween(a.outline, b.outline);
        return least && room.clearance >= least.clearance
          ? least
          : { ...room, one, other, ones: a.what, others: b.what };
      }, nearest),
    known,
  );
}

function messageOf({ clearance, ones, others, other }: Meeting): string {
  const which = `its ${ones} and the ${others} of the ${other.words}`;
  if (clearance >= 0) return `Between ${which} there are ${millimetresText(clearance)}.`;
  return `${which.replace(/^i/, "I")} overlap by ${millimetresText(-clearance)}, seen from above.`;
}

/** Each pair of neighbours once: every part and the one that it has least room to. */
export function clearancesBetween(
  parts: readonly PlacedPart[],
  { tolerance }: Measures,
  { checkpoint }: Checkpoint,
): Clearance[] {
  const nearest = parts.flatMap((one) => {
    const others = parts.filter((other) => other !== one);
    const meeting = others.reduce<Meeting | undefined>((least, other) => {
      checkpoint();
      return meetingOf(one, other, least);
    }, undefined);
    return meeting ? [meeting] : [];
  });
  const isFirst = ({ one, other }: Meeting, index: number) =>
    !nearest.slice(0, index).some((earlier) => earlier.one === other && earlier.other === one);
  return nearest.filter(isFirst).map((meeting) =>
    measured({
      part: meeting.one.name,
      against: meeting.other.name,
      kind: "between parts",
      clearance: meeting.clearance,
      where: meeting.where,
      tolerance: 2 * tolerance,
      message: messageOf(meeting),
    }),
  );
}
