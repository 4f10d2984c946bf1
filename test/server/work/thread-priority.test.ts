import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { startService } from "../process.ts";

/** Nice value of each of a process's threads: field 19 of /proc/…/stat (proc_pid_stat(5)). */
function niceValues(pid: number): number[] {
  return readdirSync(`/proc/${pid}/task`).map((thread) => {
    const text = readFileSync(`/proc/${pid}/task/${thread}/stat`, "utf8");
    return Number(text.slice(text.lastIndexOf(")") + 2).split(" ")[16]);
  });
}

test.runIf(process.platform === "linux")("a worker gives way to the event loop, and nothing else does", async () => {
  const { child, url } = await startService();
  const own = niceValues(child.pid!)[0]!;
  expect((await fetch(`${url}/readyz`)).status).toBe(200);
  const raised = niceValues(child.pid!).map((nice) => nice - own);
  expect(raised[0]).toBe(0);
  expect(raised.filter((nice) => nice > 0)).toEqual([10]);
});
