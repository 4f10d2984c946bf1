import { spawnSync } from "node:child_process";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { PLAN } from "../plan.ts";

/** Namespaces of one's own for network and mounts (Linux, unshare(1)), which root may have where a container allows it. */
const isAllowed = spawnSync("unshare", ["--net", "--mount", "true"], { stdio: "ignore" }).status === 0;
/** SIOCSIFFLAGS with IFF_UP and IFF_RUNNING (netdevice(7)): nothing but the machine itself can be reached then. */
const LOOPBACK_UP = `import fcntl, socket, struct
fcntl.ioctl(socket.socket(), 0x8914, struct.pack("16sH", b"lo", 0x41))`;

/** Asks the service for all kinds of answers, then tries to write and to reach somebody, to show that both would be seen. */
const ASK = `
const base = "http://127.0.0.1:4680";
const { readFileSync, writeFileSync } = require("node:fs");
const build = ${JSON.stringify(PLAN)};
const post = (path, body) =>
  fetch(base + path, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) });
/** Packets that had no way out (RFC 1213, ipOutNoRoutes). */
const unroutable = () => {
  const [names, values] = readFileSync("/proc/net/snmp", "utf8").split("\\n").filter((line) => line.startsWith("Ip:"));
  return Number(values.split(" ")[names.split(" ").indexOf("OutNoRoutes")]);
};
const whenUp = async () => {
  for (;;) {
    const reply = await fetch(base + "/readyz").catch(() => undefined);
    if (reply && reply.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};
(async () => {
  await whenUp();
  const statuses = [];
  const see = async (asked) => {
    const reply = await asked;
    await reply.arrayBuffer();
    statuses.push(reply.status);
  };
  for (const path of ["/", "/api/", "/api/openapi.json", "/api/scenarios", "/metrics"]) await see(fetch(base + path));
  for (const path of ["response", "preview", "previews", "bench", "passport", "link", "diagnose"]) {
    const readings = [{ between: ["jack.tip", "jack.sleeve"], settings: {}, ohms: 7000 }];
    await see(post("/api/" + path, path === "diagnose" ? { build, readings } : { build }));
  }
  const own = unroutable();
  let written = "written";
  try {
    writeFileSync("/tmp/sealed-off", "");
  } catch (error) {
    written = error.code;
  }
  const reached = await fetch("http://192.0.2.1/").then(() => "reached", (error) => error.cause.code);
  console.log(JSON.stringify({ statuses, own, written, reached, after: unroutable() }));
})();
`;

const SCRIPT = `
set -e
mount --make-rprivate /
cut -d ' ' -f 2 /proc/self/mounts | while read -r where; do mount -o remount,bind,ro "$where" 2>/dev/null || true; done
/usr/bin/python3 -c "$LOOPBACK_UP"
"$NODE" dist/main.js >&2 &
service=$!
trap 'kill $service' EXIT
"$NODE" -e "$ASK"
`;

describe("the built service without a network, on file systems that cannot be written to", () => {
  test("serves all the same, writes nothing and calls nobody", () => {
    // A machine that allows no namespaces is no fault of the service's; what Node itself refuses is checked elsewhere.
    if (!isAllowed) return console.warn("SKIPPED: namespaces of one's own are not allowed here");
    const { stdout, stderr } = spawnSync(
      "unshare",
      ["--net", "--mount", "--pid", "--fork", "--kill-child", "sh", "-c", SCRIPT],
      {
        cwd: resolve("."),
        encoding: "utf8",
        timeout: 120_000,
        env: {
          ...process.env,
          NODE: process.execPath,
          ASK,
          LOOPBACK_UP,
          PORT: "4680",
          HOST: "127.0.0.1",
          WORKERS: "2",
          LOG_LEVEL: "warn",
        },
      },
    );
    expect(stderr).not.toMatch(/EROFS|ENETUNREACH|EAI_AGAIN|error/i);
    const { statuses, own, written, reached, after } = JSON.parse(stdout);
    expect(new Set(statuses)).toEqual(new Set([200]));
    expect([written, own, reached]).toEqual(["EROFS", 0, "ENETUNREACH"]);
    expect(after).toBeGreaterThan(0);
  });
});
