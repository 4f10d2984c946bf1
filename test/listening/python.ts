import { spawnSync } from "node:child_process";

/** What a script of Debian's Python prints as JSON, given a job as JSON. @throws Error with what it complains of */
export function python<Answer>(script: string, job: unknown): Answer {
  const run = spawnSync("/usr/bin/python3", ["-c", script], {
    input: JSON.stringify(job),
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as Answer;
}
