// Bundles the service into dist/ and the page's code into public/built/, side by side: `node src/bundle.mjs [server|page]`.
import { existsSync, statSync } from "node:fs";
import { copyFile, mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { build } from "esbuild";

const SERVER_OUT = "dist";
const PAGE_OUT = "public/built";
/** The highest quality takes ten times as long for four per cent less. */
const BROTLI_QUALITY = 9;

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

/** Zod brings its messages in fifty languages along; the page's own messages are in one. */
const oneLanguage = {
  name: "one-language",
  setup({ onResolve, onLoad, resolve }) {
    onResolve({ filter: /locales\/index\.js$/ }, async ({ path, importer, resolveDir, kind, pluginData }) => {
      if (pluginData === "resolving" || !importer.includes("/zod/")) return undefined;
      const found = await resolve(path, { importer, resolveDir, kind, pluginData: "resolving" });
      return { path: found.path, namespace: "one-language", pluginData: { resolveDir: join(found.path, "..") } };
    });
    onLoad({ filter: /.*/, namespace: "one-language" }, ({ pluginData }) => ({
      contents: 'export { default as en } from "./en.js";',
      resolveDir: pluginData.resolveDir,
    }));
  },
};

/** Compressed copies for the service to hand out. */
async function compress(file) {
  const bytes = await readFile(file);
  const params = {
    [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY,
  };
  await Promise.all([
    promisify(gzip)(bytes, { level: 9 }).then((packed) => writeFile(`${file}.gz`, packed)),
    promisify(brotliCompress)(bytes, { params }).then((packed) => writeFile(`${file}.br`, packed)),
  ]);
}

/** The reference page's viewer comes ready-made: it is copied and compressed once, and again when the package changes. */
async function copyViewer() {
  const from = join(dirname(createRequire(import.meta.url).resolve("@fastify/swagger-ui")), "static");
  await mkdir(PAGE_OUT, { recursive: true });
  const copyIfNewer = async (name) => {
    const [source, target] = [join(from, name), join(PAGE_OUT, name)];
    if (existsSync(`${target}.br`) && statSync(`${target}.br`).mtimeMs > statSync(source).mtimeMs) return;
    await copyFile(source, target);
    await compress(target);
  };
  await Promise.all(["swagger-ui-bundle.js", "swagger-ui.css"].map(copyIfNewer));
}

async function bundlePage() {
  const { metafile } = await build({
    entryPoints: ["src/page/main.ts", "src/page/reference/reference.ts"],
    bundle: true,
    minify: true,
    target: "es2022",
    format: "esm",
    outdir: PAGE_OUT,
    entryNames: "[name]",
    logLevel: "warning",
    plugins: [oneLanguage],
    metafile: true,
  });
  await Promise.all(Object.keys(metafile.outputs).map(compress));
}

const [which] = process.argv.slice(2);
await Promise.all([
  ...(which === "page" ? [] : [bundleServer(), writeLimits()]),
  ...(which === "server" ? [] : [bundlePage(), copyViewer()]),
]);
