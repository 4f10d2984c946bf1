import { readBuildAt } from "../../../contract/refusal.ts";
import type { Drawer } from "../../../drawer/drawer-schema.ts";
import { matchGuards } from "../../../drawer/match.ts";
import type { Piece } from "../../../drawer/pieces.ts";

/** What of the drawer no soldered guard holds. @throws PresolderError BUILD_INVALID for a guard that cannot be read */
export function freePieces(drawer: Drawer, soldered: readonly unknown[]): readonly Piece[] {
  const builds = soldered.map((build, index) => readBuildAt(`soldered.${index}`, build));
  return matchGuards(
    drawer,
    builds.map((build) => ({ build, isSoldered: true })),
    MOST_OF_A_KIND,
  ).free;
}

/** No plan takes more of one part; further ones change nothing. */
const MOST_OF_A_KIND = 8;
