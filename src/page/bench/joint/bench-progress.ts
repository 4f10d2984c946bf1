import type { SheetJoint } from "../../drawing/joint/schedule.ts";
import type { BenchPage, JointPage } from "./bench-pages.ts";
import { minutesFor } from "./minutes-left.ts";

export interface BenchProgress {
  readonly done: number;
  readonly count: number;
  /** Index of the first page of a joint that is not ticked; undefined where all are. */
  readonly firstOpen: number | undefined;
  readonly text: string;
}

const isJoint = (page: BenchPage): page is JointPage => page.kind === "joint";

/** How far it is: joints ticked of all, and about how long the others take. */
export function progressOf(pages: readonly BenchPage[], isTicked: (step: string) => boolean): BenchProgress {
  const joints = pages.filter(isJoint);
  const open: SheetJoint[] = joints.filter(({ key }) => !isTicked(key)).map(({ joint }) => joint);
  const first = pages.findIndex((page) => isJoint(page) && !isTicked(page.key));
  const [count, done] = [joints.length, joints.length - open.length];
  const left = open.length === 0 ? "all soldered" : `about ${minutesFor(open)} min left`;
  return { done, count, firstOpen: first < 0 ? undefined : first, text: `${done} of ${count} soldered, ${left}` };
}
