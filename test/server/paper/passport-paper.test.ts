import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { describeWith } from "../../tools.ts";
import { PLAN } from "../plan.ts";

let app: App;
let folder: string;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
  folder = mkdtempSync(join(tmpdir(), "paper-"));
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await app.close();
});

const ADDRESS = "https://guards.example";
const post = (more: object) =>
  app.inject({ method: "POST", url: "/api/passport", payload: { build: PLAN, address: ADDRESS, ...more } });

async function pageOf(format: string, more: object = {}): Promise<string> {
  const { statusCode, headers, rawPayload } = await post({ format, ...more });
  expect(statusCode).toBe(200);
  expect(headers["content-type"]).toBe("application/pdf");
  const file = join(folder, `${format}.pdf`);
  writeFileSync(file, rawPayload);
  return file;
}

function millimetresOf(file: string): number[] {
  const told = execFileSync("pdfinfo", [file], { encoding: "utf8" });
  expect(told).toMatch(/Pages:\s+1\n/);
  const [, width, height] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(told)!;
  return [Number(width), Number(height)].map((points) => Math.round((points / 72) * 25.4 * 10) / 10);
}

const textOf = (file: string) => execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });

function picture(file: string, dotsPerInch: number): string {
  execFileSync("pdftoppm", ["-r", String(dotsPerInch), "-png", "-singlefile", file, file]);
  return `${file}.png`;
}

describeWith("poppler", "the passport on paper", () => {
  it("is one page of A4 that names parts, positions and readings", async () => {
    const file = await pageOf("pdf", { guitar: "the blue one", date: "2026-03-01" });
    expect(millimetresOf(file)).toEqual([210, 297]);
    const text = textOf(file);
    for (const word of ["the blue one", "2026-03-01", "250 kΩ pot", "Position 5", "Unplug the guitar"])
      expect(text).toContain(word);
  });

  it("says what stands on the person's own meter, still on one page", async () => {
    const file = await pageOf("pdf", { meter: "manual-2000" });
    expect(millimetresOf(file)).toEqual([210, 297]);
    expect(textOf(file).replace(/\s+/g, " ")).toMatch(/\d\.\d\d on the 20 kΩ/);
  });

  it("has all of a long title, set smaller, and none of it over the code or the drawing", async () => {
    const title =
      "Two humbuckers: series/parallel for the bridge, phase for the neck, both on push-pulls, as rewired for the second rehearsal room";
    const file = await pageOf("pdf", { build: { ...PLAN, title }, guitar: "the one with the long name ".repeat(2) });
    const words = textOf(file).replace(/\s+/g, " ");
    expect(words).toContain(title);
    const box = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" });
    const right = [...box.matchAll(/xMax="([\d.]+)" yMax="([\d.]+)"/g)]
      .filter(([, , bottom]) => Number(bottom) < (48 / 25.4) * 72)
      .map(([, end]) => Number(end));
    expect(Math.max(...right)).toBeLessThan(((210 - 12 - 36) / 25.4) * 72);
  });

  it("is a label of 60 × 40 mm", async () => {
    expect(millimetresOf(await pageOf("label"))).toEqual([60, 40]);
  });

  it("carries a drawing where its matrix puts it", async () => {
    // A black square in the lower right quarter of a drawing that is white elsewhere.
    const drawing = {
      box: [0, 0, 200, 100],
      shapes: [
        { kind: "line", d: "M0 0H200V100H0Z", fill: "#ffffff" },
        { kind: "line", d: "M0 0h1v1h-1z", fill: "#000000", at: [100, 0, 0, 50, 100, 50] },
      ],
    };
    const file = picture(await pageOf("pdf", { drawing }), 50);
    const DOTS = 50 / 25.4;
    const grey = execFileSync("ffmpeg", ["-v", "error", "-i", file, "-f", "rawvideo", "-pix_fmt", "gray", "-"]);
    const width = readFileSync(file).readUInt32BE(16);
    // Of 186 mm by 92 mm a drawing of two to one takes 184 by 92, from 48 mm on.
    const at = (x: number, y: number) =>
      grey[Math.round((48 + y * 92) * DOTS) * width + Math.round((13 + x * 184) * DOTS)];
    expect([at(0.25, 0.25), at(0.75, 0.25), at(0.25, 0.75), at(0.75, 0.75)]).toEqual([255, 255, 255, 0]);
  });

  it("is the same file whenever it is asked for", async () => {
    const [first, second] = [await pageOf("pdf"), await pageOf("pdf")].map((file) => readFileSync(file));
    expect(first!.equals(second!)).toBe(true);
  });
});

describeWith("zbar", "the code on the paper", () => {
  const read = (file: string) =>
    execFileSync("zbarimg", ["--quiet", "--raw", file], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
    }).trim();

  it.each(["pdf", "label"])(
    "is read as the guard's link, off a printer of 300 dots to the inch: %s",
    async (format) => {
      const { link } = (await post({ format: "json" })).json() as { link: string };
      expect(link.startsWith(`${ADDRESS}/b/`)).toBe(true);
      expect(read(picture(await pageOf(format), 300))).toBe(link);
    },
  );
});
