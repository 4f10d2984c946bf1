import type { Connection } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import type { CutWire } from "./cut-list.ts";
import type { SheetStage } from "./sheet-writer.ts";

/** "volume.1 (joint 14)": a bent lug, and the joint at the case that takes it in. */
function bentLugText(build: Build, { number, from, to }: Connection, stages: readonly SheetStage[]): string {
  const joint = stages
    .flatMap((stage) => stage.joints)
    .find(({ arrivals }) => arrivals.some(({ connection }) => connection === number));
  const lug = isCase(build, from) ? to : from;
  return joint ? `${lug} (joint ${joint.number})` : lug;
}

/** What to do before the iron is hot. */
export function preparations(
  build: Build,
  connections: readonly Connection[],
  cuts: readonly CutWire[],
  stages: readonly SheetStage[],
): string[] {
  const cases = new Set(connections.flatMap(({ from, to }) => [from, to]).filter((lug) => isCase(build, lug)));
  const bent = connections
    .filter(({ means }) => means === "bent lug")
    .map((connection) => bentLugText(build, connection, stages));
  return [
    ...(cases.size > 0
      ? [
          `Roughen a spot on the back of ${[...cases].join(", ")} so that solder takes, with the pickups far away: filings cling to magnets for ever and short coils.`,
        ]
      : []),
    "Then fit every part to the guard and turn the pots so that their lugs face where their wires come from.",
    ...(bent.length > 0
      ? [`Bend back until they lie on the case; each is soldered later, in the joint named: ${bent.join(", ")}.`]
      : []),
    ...(cuts.length > 0 ? [`Cut and strip the ${cuts.length} wires of the cut list; mark each with its number.`] : []),
  ];
}

function isCase(build: Build, lug: string): boolean {
  const [part, local] = lug.split(".");
  return local === "case" && build.parts[part!]?.kind === "pot";
}
