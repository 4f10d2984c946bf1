// Builds the browser's code into public/built, with compressed copies beside it for the service to hand out.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { build } from "esbuild";

const OUT = "public/built";

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

await build({
  entryPoints: ["src/page/main.ts"],
  bundle: true,
  minify: true,
  target: "es2022",
  format: "esm",
  outdir: OUT,
  logLevel: "warning",
  plugins: [oneLanguage],
});

for (const name of readdirSync(OUT).filter((file) => /\.(js|css)$/.test(file))) {
  const file = join(OUT, name);
  const bytes = readFileSync(file);
  writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
  writeFileSync(
    `${file}.br`,
    brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }),
  );
}
