// Bundles the service into dist/ and the page's code into public/built/, side by side: `node src/bundle.mjs [server|page]`.
import { readdirSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
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

async function bundlePage() {
  await build({
    entryPoints: ["src/page/main.ts"],
    bundle: true,
    minify: true,
    target: "es2022",
    format: "esm",
    outdir: PAGE_OUT,
    logLevel: "warning",
    plugins: [oneLanguage],
  });
  const files = readdirSync(PAGE_OUT).filter((file) => /\.(js|css)$/.test(file));
  await Promise.all(files.map((file) => compress(join(PAGE_OUT, file))));
}

const [which] = process.argv.slice(2);
await Promise.all([...(which === "page" ? [] : [bundleServer()]), ...(which === "server" ? [] : [bundlePage()])]);
