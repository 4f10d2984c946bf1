// Bundles the service into dist/, the reference's viewer into public/reference/ and the page into public/: `node src/bundle.mjs [server|page]`.
import { existsSync, statSync } from "node:fs";
import { copyFile, mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { bundlePage } from "./bundle-page.mjs";
import { compress } from "./compress.mjs";

const SERVER_OUT = "dist";
const REFERENCE_OUT = "public/reference";

function bundleServer() {
  const common = { platform: "node", target: "node20", logLevel: "warning" };
  return Promise.all([
    build({
      ...common,
      entryPoints: ["src/server/main.ts", "src/server/work/worker.ts"],
      bundle: true,
      splitting: true,
      format: "esm",
      packages: "external",
      sourcemap: true,
      outdir: SERVER_OUT,
      entryNames: "[name]",
    }),
    build({
      ...common,
      entryPoints: ["src/server/work/worker-entry.cts"],
      format: "cjs",
      outfile: join(SERVER_OUT, "worker-entry.cjs"),
    }),
  ]);
}

/** Every bound with its reason, for the reference page; the reasons are comments, which no bundle keeps. */
async function writeLimits() {
  const file = "src/limits.ts";
  const { outputFiles } = await build({ entryPoints: [file], bundle: true, write: false, format: "esm" });
  const values = await import(`data:text/javascript,${encodeURIComponent(outputFiles[0].text)}`);
  const commented = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export const (\w+)/g;
  const limits = [...(await readFile(file, "utf8")).matchAll(commented)].map(([, comment, name]) => ({
    name,
    value: values[name],
    reason: comment.replaceAll(/\s*\n\s*\*\s*|\s+/g, " ").trim(),
  }));
  const bare = Object.keys(values).filter((name) => !limits.some((limit) => limit.name === name));
  if (bare.length > 0) throw new Error(`${file}: no reason stands before ${bare.join(", ")}`);
  await mkdir(SERVER_OUT, { recursive: true });
  await writeFile(join(SERVER_OUT, "limits.json"), JSON.stringify(limits));
}

/** The reference's viewer comes ready-made: it is copied and compressed once, and again when the package changes. */
async function copyViewer() {
  const from = join(dirname(createRequire(import.meta.url).resolve("@fastify/swagger-ui")), "static");
  await mkdir(REFERENCE_OUT, { recursive: true });
  const copyIfNewer = async (name) => {
    const [source, target] = [join(from, name), join(REFERENCE_OUT, name)];
    if (existsSync(`${target}.br`) && statSync(`${target}.br`).mtimeMs > statSync(source).mtimeMs) return;
    await copyFile(source, target);
    await compress(target);
  };
  await Promise.all(["swagger-ui-bundle.js", "swagger-ui.css"].map(copyIfNewer));
}

async function bundleReference() {
  const { metafile } = await build({
    entryPoints: ["src/page/reference/reference.ts"],
    bundle: true,
    minify: true,
    target: "es2022",
    format: "esm",
    outdir: REFERENCE_OUT,
    entryNames: "[name]",
    logLevel: "warning",
    metafile: true,
  });
  await Promise.all(Object.keys(metafile.outputs).map(compress));
}

const [which] = process.argv.slice(2);
await Promise.all([
  ...(which === "page" ? [] : [bundleServer(), writeLimits()]),
  ...(which === "server" ? [] : [bundlePage(), bundleReference(), copyViewer()]),
]);
