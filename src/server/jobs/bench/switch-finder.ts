import { findSwitch } from "../../../bench/switch-finder/find-switch.ts";
import type { SwitchQuestion } from "../../../bench/switch-finder/question.ts";
import { switchFaults } from "../../../bench/switch-finder/switch-faults.ts";
import { expandBuild } from "../../../build-file/expand.ts";
import type { SwitchAnswer, SwitchBody } from "../../../contract/bench/switch-finder.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { refused } from "../../../errors.ts";
import type { Job } from "../../work/job.ts";

function read({ build, ...body }: SwitchBody): SwitchQuestion {
  if (build !== undefined) readBuildAt("build", build);
  const question = build === undefined ? body : { ...body, source: expandBuild(build) };
  const faults = switchFaults(question);
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  return question;
}

export const switchJob = {
  read,
  run: (question: SwitchQuestion): SwitchAnswer => findSwitch(question),
  // Which of some hundred touches was misheard is tried one by one.
  size: ({ lugs }) => (lugs.length > 24 ? "large" : "small"),
  gate: "render",
} satisfies Job<SwitchQuestion, SwitchAnswer>;
