import type { BuildSheet } from "../../src/bench/sheet/build-sheet.ts";
import { jointsIn } from "../bench/sheet/guards.ts";

/** What the schedule says of a guard whose joints up to `last` are made, by nothing but its joints' ends and what waits. */
export function scheduled(sheet: BuildSheet, first: number, last: number) {
  const done = jointsIn(sheet.sittings).filter(({ number }) => number <= last);
  const ownPiece = (lead: string) => sheet.pieces.find(({ stops, grown }) => grown && stops[0] === lead)!.number;
  const pieceOf = ({ lead, wire }: { lead?: string; wire?: number }) => wire ?? ownPiece(lead!);
  const endsOf = (from: number) =>
    done.filter(({ number }) => number >= from).flatMap(({ at, ends }) => ends.map((end) => `${pieceOf(end)}@${at}`));
  const hanging = done.flatMap(({ waits }) =>
    waits.filter(({ joint }) => joint > last).map((wait) => `${pieceOf(wait)}@${wait.at} by ${wait.joint}`),
  );
  return {
    ends: endsOf(1).sort(),
    now: endsOf(first).sort(),
    hanging: hanging.sort(),
    heated: done.filter(({ number }) => number >= first).map(({ kind, at }) => `${kind} ${at}`),
  };
}
