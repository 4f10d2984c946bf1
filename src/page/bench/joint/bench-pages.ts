import type { SheetAnswer } from "../../../contract/bench/bench.ts";
import type { Schedule, SheetJoint, SheetSitting, SheetStage } from "../../drawing/joint/schedule.ts";
import { jointKey } from "./joint-key.ts";

interface Page {
  /** The same in every sheet that has the same to show. */
  readonly key: string;
}

export interface JointPage extends Page {
  readonly kind: "joint";
  readonly joint: SheetJoint;
  readonly stage: SheetStage;
}

export interface ChecksPage extends Page {
  readonly kind: "checks";
  readonly stage: SheetStage;
}

export interface ReadingsPage extends Page {
  readonly kind: "readings";
  readonly sitting: SheetSitting;
}

export interface PreparationsPage extends Page {
  readonly kind: "preparations";
  readonly texts: readonly string[];
}

export type BenchPage =
  | (Page & { readonly kind: "cautions" })
  | PreparationsPage
  | JointPage
  | ChecksPage
  | ReadingsPage;

function stagePages(schedule: Schedule, stage: SheetStage): BenchPage[] {
  const joints = stage.joints.map(
    (joint): JointPage => ({ kind: "joint", key: jointKey(schedule, joint), joint, stage }),
  );
  if (stage.checks.length === 0) return joints;
  return [...joints, { kind: "checks", key: `checks of ${joints.map(({ key }) => key).join("; ")}`, stage }];
}

/** What is gone through at the bench, one thing a page: cautions before all, joints, and checks and readings where they are due. */
export function benchPages(schedule: Schedule, { preparations, sittings }: SheetAnswer): BenchPage[] {
  return [
    { kind: "cautions", key: "cautions" },
    { kind: "preparations", key: "preparations", texts: preparations },
    ...sittings.flatMap((sitting): BenchPage[] => [
      ...sitting.stages.flatMap((stage) => stagePages(schedule, stage)),
      ...(sitting.readings.length > 0
        ? [{ kind: "readings", key: `readings of ${sitting.title}`, sitting } as const]
        : []),
    ]),
  ];
}
