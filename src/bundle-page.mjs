import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { build } from "esbuild";
import { rolldown } from "rolldown";
import { compress } from "./compress.mjs";

const OUT = "public";
const BUILT = join(OUT, "built");

/** Each with a module graph of its own: what a worker needs is not what the page needs. */
const ENTRIES = {
  main: "src/page/main.ts",
  "curve-worker": "src/page/engine/curve-worker.ts",
  "bench-worker": "src/page/engine/bench-worker.ts",
  "sound-worker": "src/page/sound/sound-worker.ts",
  "cell-worker": "src/page/cells/cell-worker.ts",
  "drive-worklet": "src/page/listen/chain/drive-worklet.ts",
  "answer-worker": "src/page/builds/answer-worker.ts",
  "capture-worklet": "src/page/sound-card/capture-worklet.ts",
};

/** What makes WebAssembly: the page's security policy compiles none, and the plain loops beside it serve. */
const WITHOUT_WEBASSEMBLY = {
  "/src/filter/pffft.ts": "export const pffft = null;",
  "/src/audio/simd/sound-kernel.ts": "export const soundKernel = null;",
};

const withoutWebAssembly = {
  name: "without-webassembly",
  load(id) {
    const path = id.replaceAll("\\", "/");
    const file = Object.keys(WITHOUT_WEBASSEMBLY).find((name) => path.endsWith(name));
    return file === undefined ? null : { code: WITHOUT_WEBASSEMBLY[file], moduleType: "js" };
  },
};

/** Formatters that the plot's library opens at once and this page, which writes its own axes, never asks for anything. */
const UNUSED_FORMATTERS = [
  ["new Intl.NumberFormat(domEnv ? nav.language : 'en-US')", "{ format: String }"],
  ["new Intl.DateTimeFormat().resolvedOptions().timeZone", '"UTC"'],
];

/** To open the browser's language data takes longer than the first curve. */
const withoutLanguageData = {
  name: "without-language-data",
  transform(code, id) {
    if (!id.endsWith("uPlot.esm.js")) return null;
    return UNUSED_FORMATTERS.reduce((text, [written, instead]) => {
      if (!text.includes(written)) throw new Error(`${id} no longer has ${written}`);
      return text.replace(written, instead);
    }, code);
  },
};

/** What describes a schema to the readers of the HTTP interface: the page only reads by it. */
const SCHEMA_DESCRIBERS = ["/zod/v4/core/json-schema-processors.js", "/zod/v4/core/to-json-schema.js"];

const withoutSchemaDescribers = {
  name: "without-schema-describers",
  transform(code, id) {
    const path = id.replaceAll("\\", "/");
    if (!SCHEMA_DESCRIBERS.some((file) => path.endsWith(file))) return null;
    const names = [...code.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name);
    if (names.length === 0) throw new Error(`${id} no longer exports a function`);
    return `const none = () => {};\nexport { ${names.map((name) => `none as ${name}`).join(", ")} };`;
  },
};

async function bundleEntry(name, input) {
  const bundle = await rolldown({
    input: { [name]: input },
    platform: "browser",
    plugins: [withoutWebAssembly, withoutLanguageData, withoutSchemaDescribers],
    transform: { target: "es2022" },
    logLevel: "warn",
  });
  const { output } = await bundle.generate({
    format: "esm",
    minify: true,
    entryFileNames: "[name].js",
    chunkFileNames: "part-[name]-[hash].js",
  });
  await bundle.close();
  return output.map((each) => ({ name: each.fileName, text: each.code, imports: each.imports, of: each.name }));
}

/** What every page wears, and what comes with the code that shows it. */
const STYLES = ["main.css", "joint.css", "tools.css", "shelf.css", "cells.css", "wanted.css", "drawer.css"];

async function styleSheets() {
  const { outputFiles } = await build({
    entryPoints: STYLES.map((name) => join("src/page/style", name)),
    outdir: BUILT,
    bundle: true,
    minify: true,
    write: false,
    target: "es2022",
    logLevel: "warning",
  });
  return outputFiles.map(({ path, text }) => ({ name: basename(path), text }));
}

/** The guards one may start from, and the first of them read and ready: facts of the project, worked out once. */
async function pageData() {
  const { outputFiles } = await build({
    entryPoints: ["src/server/shelves/page-data.ts"],
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
    target: "node20",
    logLevel: "warning",
  });
  const { makePageData } = await import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`
  );
  const { guards, offer, first } = makePageData("scenarios");
  const files = Object.entries({ guards, offer }).map(([name, data]) => {
    return { name: `${name}.json`, text: JSON.stringify(data) };
  });
  return { files, first: JSON.stringify(first) };
}

function digest(texts) {
  const hash = createHash("sha256");
  for (const text of texts) hash.update(text).update("\0");
  return hash.digest("hex").slice(0, 12);
}

/** What the first screen is made of beside the entry, by their files. */
const FIRST_SCREEN = ["curves-panel"];

/** A file of the page's own code and all that it imports. */
function withImports(files, name, seen = new Set()) {
  if (seen.has(name)) return seen;
  seen.add(name);
  for (const other of files.find((file) => file.name === name).imports) withImports(files, other, seen);
  return seen;
}

/** The page with the addresses of this version, what the first screen loads, and the first guard. */
function pageOf(template, files, first, at) {
  const needed = new Set();
  for (const { name, of } of files) if (FIRST_SCREEN.includes(of)) withImports(files, name, needed);
  const preloads = [...needed]
    .filter((name) => name !== "main.js")
    .map((name) => {
      return `<link rel="modulepreload" href="${at}${name}">`;
    });
  // Within a script element, "<" would begin a tag.
  const data = first.replaceAll("<", "\\u003c");
  return template
    .replaceAll("/built/", at)
    .replace("<!-- code -->", preloads.join("\n    "))
    .replace('id="first-guard">', (element) => `${element}${data}`);
}

/** The page's service worker, which knows every file of this version by name. */
async function serviceWorker(files, at, page) {
  const shared = ["page.webmanifest", "icon.svg", "icon-192.png", "icon-512.png"];
  const entries = [
    { url: "/", revision: digest([page]) },
    ...files.map(({ name }) => ({ url: `${at}${name}`, revision: null })),
    ...(await Promise.all(
      shared.map(async (name) => ({ url: `/${name}`, revision: digest([await readFile(join(OUT, name))]) })),
    )),
  ];
  const { outputFiles } = await build({
    entryPoints: ["src/page/offline/service-worker.ts"],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2022",
    define: { "self.__WB_MANIFEST": JSON.stringify(entries), "process.env.NODE_ENV": '"production"' },
    logLevel: "warning",
  });
  return outputFiles[0].text;
}

/** Writes `public/index.html`, `public/sw.js` and everything that they name, under an address that changes with its content. */
export async function bundlePage() {
  const bundles = Object.entries(ENTRIES).map(([name, input]) => bundleEntry(name, input));
  const [styles, data, template, ...code] = await Promise.all([
    styleSheets(),
    pageData(),
    readFile("src/page/index.html", "utf8"),
    ...bundles,
  ]);
  const files = [...styles, ...data.files, ...code.flat()];
  const version = digest([template, data.first, ...files.flatMap(({ name, text }) => [name, text])]);
  const directory = join(BUILT, version);
  await mkdir(directory, { recursive: true });
  await Promise.all(
    files.map(async ({ name, text }) => {
      await writeFile(join(directory, name), text);
      await compress(join(directory, name));
    }),
  );
  const page = pageOf(template, files, data.first, `/built/${version}/`);
  await writeFile(join(OUT, "sw.js"), await serviceWorker(files, `/built/${version}/`, page));
  // Last of all, since it is what says that all the rest is there.
  await writeFile(join(OUT, "index.html"), page);
  await Promise.all([join(OUT, "index.html"), join(OUT, "sw.js")].map(compress));
  const older = (await readdir(BUILT)).filter((name) => name !== version);
  await Promise.all(older.map((name) => rm(join(BUILT, name), { recursive: true, force: true })));
}
