// Photographs the page for README: `npm run picture` writes public/picture.png.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { createInterface } from "node:readline";
import { chromium } from "playwright-core";

const PICTURE = "public/picture.png";
const SCENARIO = "scenarios/hss-250k-or-500k.json";
const CHROMIUM = "/usr/bin/chromium";
const FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"];

/** The built service on a free port; the first line it prints names the address. */
async function startService() {
  const env = { ...process.env, HOST: "127.0.0.1", PORT: "0", LOG_LEVEL: "silent" };
  const service = spawn(process.execPath, ["dist/main.js"], { env, stdio: ["ignore", "pipe", "inherit"] });
  const [line] = await once(createInterface({ input: service.stdout }), "line");
  return { service, address: /http:\S+/.exec(line)[0] };
}

/** A link rather than clicks: it opens whatever the page looks like. */
async function linkTo(address, file) {
  const { build } = JSON.parse(await readFile(file, "utf8"));
  const body = JSON.stringify({ build, view: { settings: { lever: 2 } } });
  const answer = await fetch(`${address}api/link`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body,
  });
  if (!answer.ok) throw new Error(await answer.text());
  return (await answer.json()).url;
}

async function photograph(url, path) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, colorScheme: "light" });
    await page.goto(url);
    await page.locator("main canvas").first().waitFor();
    await page.waitForLoadState("networkidle");
    await page.screenshot({ path });
  } finally {
    await browser.close();
  }
}

const { service, address } = await startService();
try {
  await photograph(await linkTo(address, SCENARIO), PICTURE);
  console.log(PICTURE);
} finally {
  service.kill();
}
