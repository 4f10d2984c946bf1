import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { until } from "../loopback.ts";

const NGINX = "/usr/sbin/nginx";

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => void server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}

export interface Balancer {
  readonly url: string;
  stop(): Promise<void>;
}

/** nginx on the template beside this file, in front of two instances. */
export async function startProxy(firstPort: number, secondPort: number): Promise<Balancer> {
  const directory = mkdtempSync(join(tmpdir(), "presolder-nginx-"));
  // Where nginx is started by root, its workers run as somebody else.
  chmodSync(directory, 0o755);
  const port = await freePort();
  const words: Record<string, string> = {
    "@DIRECTORY@": directory,
    "@FIRST_PORT@": String(firstPort),
    "@SECOND_PORT@": String(secondPort),
    "@PORT@": String(port),
  };
  const template = readFileSync(new URL("./nginx.conf.template", import.meta.url), "utf8");
  const config = join(directory, "nginx.conf");
  writeFileSync(
    config,
    template.replace(/@[A-Z_]+@/g, (word) => words[word]!),
  );
  const args = ["-p", directory, "-c", config];
  const check = spawnSync(NGINX, [...args, "-t"], { encoding: "utf8" });
  if (check.status !== 0) throw new Error(`nginx refuses its configuration: ${check.stderr}`);
  const child: ChildProcess = spawn(NGINX, [...args, "-g", "daemon off;"], { stdio: "ignore" });
  const url = `http://127.0.0.1:${port}`;
  const answers = () =>
    fetch(`${url}/healthz`).then(
      ({ status }) => status === 200,
      () => false,
    );
  const stop = async () => {
    const ended = new Promise((resolve) => child.once("exit", resolve));
    child.kill("SIGTERM");
    await ended;
    rmSync(directory, { recursive: true, force: true });
  };
  try {
    await until(answers, "nginx answers");
  } catch (error) {
    await stop();
    throw error;
  }
  return { url, stop };
}
