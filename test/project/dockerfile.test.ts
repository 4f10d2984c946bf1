import { execFileSync, spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { thoroughly } from "../effort.ts";

const PORT = "47681";

interface Instruction {
  readonly word: string;
  readonly rest: string;
}

/** The Dockerfile's instructions, continued lines joined, stage by stage. */
function stages(text: string): { name: string; instructions: Instruction[] }[] {
  const lines = text.replaceAll(/\\\n\s*/g, "").split("\n");
  const result: { name: string; instructions: Instruction[] }[] = [];
  for (const line of lines.filter((entry) => entry.trim() !== "" && !entry.startsWith("#"))) {
    const [, word = "", rest = ""] = /^(\S+)\s+(.*)$/.exec(line)!;
    if (word === "FROM") result.push({ name: / AS (\S+)/.exec(rest)?.[1] ?? "final", instructions: [] });
    else result.at(-1)!.instructions.push({ word, rest });
  }
  return result;
}

/** Carries out a stage in a directory of its own, as an engine would, without one. */
function carryOut(
  instructions: Instruction[],
  stageRoot: (name: string) => string,
  context: string,
  own: string,
): void {
  let workdir = own;
  for (const { word, rest } of instructions) {
    if (word === "WORKDIR") {
      workdir = join(own, rest);
      mkdirSync(workdir, { recursive: true });
    } else if (word === "RUN") execFileSync("sh", ["-c", rest], { cwd: workdir, stdio: "pipe" });
    else if (word === "COPY") {
      const from = /^--from=(\S+)\s+/.exec(rest);
      const paths = rest.replace(/^--from=\S+\s+/, "").split(/\s+/);
      const target = join(workdir, paths.pop()!);
      for (const path of paths) {
        const source = from ? join(stageRoot(from[1]!), path) : join(context, path);
        const into = paths.length > 1 || target.endsWith("/") || existsSync(join(target, "package.json"));
        const isFile = /\.[a-z]+$/.test(path);
        const destination = into || isFile ? join(target, path.split("/").at(-1)!) : target;
        mkdirSync(dirname(destination), { recursive: true });
        cpSync(source, destination, { recursive: true, verbatimSymlinks: true });
      }
    }
  }
}

async function untilHealthy(command: string[], cwd: string): Promise<boolean> {
  for (let attempt = 0; attempt < 100; attempt++) {
    const [program, ...args] = command;
    if (spawnSync(program!, args, { cwd, env: { ...process.env, PORT } }).status === 0) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

test("the Dockerfile copies from the repository only what is in it", () => {
  const copied = stages(readFileSync("Dockerfile", "utf8"))
    .flatMap(({ instructions }) => instructions)
    .filter(({ word, rest }) => word === "COPY" && !rest.startsWith("--from"))
    .flatMap(({ rest }) => rest.split(/\s+/).slice(0, -1));
  expect(copied).toContain("src");
  for (const path of copied) expect(execFileSync("git", ["ls-files", path], { encoding: "utf8" }), path).not.toBe("");
});

// Two installs of every package take a minute.
thoroughly(
  "the Dockerfile's commands, carried out in order in a clean copy, build an image whose service answers its health check",
  { timeout: 400_000 },
  async () => {
    const root = mkdtempSync(join(tmpdir(), "presolder-image-"));
    onTestFinished(() => rmSync(root, { recursive: true, force: true }));
    const context = join(root, "context");
    mkdirSync(context);
    execFileSync("sh", ["-c", `git archive HEAD | tar -x -C ${context}`]);
    const parsed = stages(readFileSync(join(context, "Dockerfile"), "utf8"));
    const stageRoot = (name: string) => join(root, name);
    for (const { name, instructions } of parsed) {
      mkdirSync(stageRoot(name));
      carryOut(instructions, stageRoot, context, stageRoot(name));
    }
    const final = parsed.at(-1)!.instructions;
    const argument = (word: string) => final.find((instruction) => instruction.word === word)!.rest;
    expect(argument("USER")).toBe("node");
    const cwd = join(stageRoot("final"), "app");
    const command = JSON.parse(argument("CMD")) as string[];
    const service = spawn(command[0]!, command.slice(1), {
      cwd,
      env: { ...process.env, NODE_ENV: "production", HOST: "127.0.0.1", PORT, LOG_LEVEL: "silent" },
      stdio: "ignore",
    });
    onTestFinished(() => void service.kill("SIGKILL"));
    const check = JSON.parse(argument("HEALTHCHECK").replace(/^.*? CMD /, "")) as string[];
    expect(await untilHealthy(check, cwd)).toBe(true);
  },
);

thoroughly("the Dockerfile is built by a container engine where one is at hand", { timeout: 600_000 }, () => {
  const hasEngine = spawnSync("docker", ["info"], { stdio: "ignore" }).status === 0;
  if (!hasEngine) return console.warn("SKIPPED: no container engine is at hand; the commands alone were carried out");
  const { status, stderr } = spawnSync("docker", ["build", "--quiet", "."], { encoding: "utf8" });
  expect(stderr).toBe("");
  expect(status).toBe(0);
});
