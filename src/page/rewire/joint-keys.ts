import type { Pointed } from "./pointed.ts";

/** One joint is where Tab goes; arrow keys walk on in the order of the steps, and Enter or a tap goes to the step. */
export function listenToJoints(
  joints: readonly SVGElement[],
  pointed: Pointed,
  go: (step: number) => void,
): { stand: () => void } {
  const isSeen = (joint: SVGElement) => joint.getClientRects().length > 0;
  let standing = 0;
  const stand = (step: number) => {
    joints[standing]?.setAttribute("tabindex", "-1");
    standing = step;
    joints[standing]?.setAttribute("tabindex", "0");
  };
  const walk = (from: number, by: 1 | -1) => {
    let step = from + by;
    while (step in joints && !isSeen(joints[step]!)) step += by;
    joints[step]?.focus();
  };
  for (const [step, joint] of joints.entries()) {
    pointed.listen(joint, joint, step);
    joint.addEventListener("focus", () => stand(step));
    joint.addEventListener("click", () => go(step));
    joint.addEventListener("keydown", (event) => {
      const { key } = event;
      if (key === "Enter" || key === " ") go(step);
      else if (key === "ArrowRight" || key === "ArrowDown") walk(step, 1);
      else if (key === "ArrowLeft" || key === "ArrowUp") walk(step, -1);
      else return;
      event.preventDefault();
    });
  }
  return {
    /** Keeps the joint that Tab goes to among those that are seen. */
    stand: () => {
      const now = joints[standing];
      stand(now && isSeen(now) ? standing : Math.max(0, joints.findIndex(isSeen)));
    },
  };
}
