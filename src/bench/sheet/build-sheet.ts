import { type Connection, connectionsOf, isCut } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { CAUTIONS } from "./cautions.ts";
import { coloursOf } from "./colours.ts";
import { type Allowances, type CutWire, cutList, DEFAULT_ALLOWANCES } from "./cut-list.ts";
import { jointsOf } from "./joints.ts";
import { preparations } from "./preparations.ts";
import { type SheetStage, SheetWriter } from "./sheet-writer.ts";
import { stagesOf } from "./stages.ts";

export interface BuildSheet {
  /** Cautions come first. */
  readonly cautions: readonly string[];
  readonly preparations: readonly string[];
  readonly connections: readonly Connection[];
  readonly cuts: readonly CutWire[];
  readonly allowances: Allowances;
  readonly stages: readonly SheetStage[];
  readonly notes: readonly string[];
}

function notes(build: Build, clashes: readonly string[]): string[] {
  const pickups = Object.values(build.parts).some((part) => part.kind === "pickup");
  return [
    ...(clashes.length > 0
      ? [`The build gives ${clashes.join(", ")} both to ground and to something hot: mark one of them with tape.`]
      : []),
    ...(pickups ? ["Lead colours of pickups differ between makers: go by the meter and the phase check."] : []),
    "Lengths are measured along the guard's edges from part to part; try the first wire before cutting the rest.",
  ];
}

/** What to solder in which order. The same build always gives the same sheet. */
export function buildSheet(build: Build, allowances: Allowances = DEFAULT_ALLOWANCES): BuildSheet {
  const connections = connectionsOf(build);
  const joints = jointsOf(build, connections);
  const cut = connections.filter(isCut);
  const cuts = cutList(build, connections, allowances);
  const writer = new SheetWriter(build, connections, joints);
  const stages = stagesOf(build, connections, joints).map((stage) => writer.stage(stage));
  return {
    cautions: CAUTIONS,
    preparations: preparations(build, connections, cuts, stages),
    connections,
    cuts,
    allowances,
    stages,
    notes: notes(build, coloursOf(build, cut).clashes),
  };
}
