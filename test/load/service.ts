import { type ChildProcess, spawn } from "node:child_process";

/** The built service as a process of its own on a free port of the loopback interface. */
export async function startService(
  environment: Record<string, string> = {},
): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, ["--enable-source-maps", "dist/main.js"], {
    env: { ...process.env, HOST: "127.0.0.1", PORT: "0", LOG_LEVEL: "warn", REQUESTS_PER_MINUTE: "0", ...environment },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const url = await new Promise<string>((resolve, reject) => {
    let text = "";
    child.stdout.on("data", (chunk) => {
      text += chunk;
      const found = /listens on (http:\S+)\//.exec(text)?.[1];
      if (found) resolve(found);
    });
    child.once("exit", (code) => reject(new Error(`the service ended with ${code}`)));
  });
  return { child, url };
}
