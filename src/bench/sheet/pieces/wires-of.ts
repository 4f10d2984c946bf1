import type { Build } from "../../../build-file/schema.ts";
import { partOf } from "./loose-ends.ts";
import type { Piece } from "./piece.ts";

/** The pieces as the wires of a build, with what the build joins inside its parts. */
export function wiresOf(build: Build, pieces: readonly Pick<Piece, "stops">[]): Build["wires"] {
  const inside = build.wires.filter((wire) => "how" in wire && wire.how === "inside");
  const soldered = pieces.flatMap(({ stops }) =>
    stops
      .slice(1)
      .map((to, index) => ({ from: stops[index]!, to }))
      .filter(({ from, to }) => from !== to),
  );
  return [...inside, ...soldered];
}

/** What the first sitting makes: the guard without its pickups, by its own pieces. */
export function harnessOf(build: Build, pieces: readonly Pick<Piece, "stops">[]): Build {
  const isPickup = (lug: string) => build.parts[partOf(lug)]!.kind === "pickup";
  const own = pieces.filter(({ stops }) => !stops.some(isPickup));
  return {
    ...build,
    parts: Object.fromEntries(Object.entries(build.parts).filter(([, { kind }]) => kind !== "pickup")),
    wires: wiresOf(build, own).filter(({ from, to }) => !isPickup(from) && !isPickup(to)),
  };
}
