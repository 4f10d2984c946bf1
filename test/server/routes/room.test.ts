import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import type { RoomAnswer, RoomRequest } from "../../../src/contract/bench/room.ts";
import * as limits from "../../../src/limits.ts";
import { describeWith } from "../../tools.ts";
import { PLAN } from "../plan.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (url: string, payload: object) => service.app.inject({ method: "POST", url, payload });

/** A rectangle in millimetres, as text. */
const box = (left: number, low: number, right: number, high: number): [string, string][] =>
  [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ].map(([x, y]) => [`${x}mm`, `${y}mm`]);

const MEASURES: Omit<RoomRequest, "build"> = {
  cavities: [{ name: "controls", outline: box(-60, 60, 140, 120), depth: "40mm" }],
  parts: { volume: { outline: "pot-24", depth: "27mm" } },
};
const BODY = { build: PLAN, ...MEASURES };

describe("POST /api/room", () => {
  test("answers with the least room first and what is still to be measured", async () => {
    const answer = await post("/api/room", BODY);
    expect(answer.statusCode).toBe(200);
    const { clearances, asked, figures, shapes }: RoomAnswer = answer.json();
    // The volume sits at 55, 75 mm: 15 mm from the wall, of which its body takes 12.
    expect(clearances[0]).toMatchObject({ part: "volume", kind: "side", verdict: "goes in", tolerance: 0.001 });
    expect(Math.abs(clearances[0]!.clearance! - 0.003)).toBeLessThan(1e-5);
    expect(clearances.find(({ kind }) => kind === "depth")).toMatchObject({ part: "volume", clearance: 0.013 });
    expect(asked).toContainEqual({ of: "lever", what: "depth", how: expect.any(String) });
    expect(figures).toEqual([{ part: "volume", what: expect.any(String), source: expect.stringMatching(/\w/) }]);
    expect(shapes).toHaveLength(1);
  });

  test("refuses a line that crosses itself, a part that is not there and a name for no shape, each by its path", async () => {
    const bow = [
      [0, 0],
      ["40mm", "40mm"],
      ["40mm", 0],
      [0, "40mm"],
    ];
    const crossed = await post("/api/room", { ...BODY, cavities: [{ name: "controls", outline: bow }] });
    expect([crossed.statusCode, crossed.json().errors]).toEqual([
      400,
      [{ path: "cavities.0.outline", message: expect.stringContaining("sides 1 and 3 meet at x 20 mm, y 20 mm") }],
    ]);
    const unknown = await post("/api/room", { ...BODY, parts: { volumes: { depth: "3mm" } } });
    expect(unknown.json().errors).toEqual([{ path: "parts.volumes", message: 'the build has no part "volumes"' }]);
    const twins = await post("/api/room", { ...BODY, cavities: [MEASURES.cavities[0], MEASURES.cavities[0]] });
    expect(twins.json().errors).toEqual([
      { path: "cavities.1.name", message: expect.stringContaining("expected a name for each") },
    ]);
    const shapeless = await post("/api/room", { ...BODY, parts: { volume: { outline: "pot-25" } } });
    expect(shapeless.json().errors[0]).toEqual({
      path: "parts.volume.outline",
      message: expect.stringMatching(/^expected one of "pot-24", .*a list of points$/),
    });
  });

  test("has bounds on cavities, points, screws, lengths and pages", async () => {
    const { cavities } = MEASURES;
    const round = (points: number) =>
      Array.from({ length: points }, (_, index) => {
        const angle = (2 * Math.PI * index) / points;
        return [0.05 * Math.cos(angle), 0.05 * Math.sin(angle)];
      });
    const many = (count: number) => Array(count).fill(["1mm", "1mm"]);
    const cases: readonly [object, string, number][] = [
      [{ cavities: Array(limits.MAX_CAVITIES + 1).fill(cavities[0]) }, "cavities", limits.MAX_CAVITIES],
      [
        { cavities: [{ name: "a", outline: round(limits.MAX_OUTLINE_POINTS + 1) }] },
        "cavities.0.outline",
        limits.MAX_OUTLINE_POINTS,
      ],
      [{ guard: { screws: many(limits.MAX_SCREWS + 1) } }, "guard.screws", limits.MAX_SCREWS],
      [{ guard: { screws: [["1.1m", 0]] } }, "guard.screws.0.0", limits.MAX_REACH_METRES],
      [{ guard: { thickness: "0.21m" } }, "guard.thickness", limits.MAX_DEPTH_METRES],
    ];
    for (const [change, path, bound] of cases) {
      const answer = await post("/api/room", { ...BODY, ...change });
      expect([answer.statusCode, answer.json().errors?.[0].path]).toEqual([400, path]);
      expect(answer.json().errors[0].message).toContain(String(bound));
    }
    const own = { outline: round(limits.MAX_OUTLINE_POINTS) };
    const much = await post("/api/room", {
      ...BODY,
      cavities: Array(limits.MAX_CAVITIES).fill({ name: "a", outline: own.outline }),
      parts: { volume: own, tone1: own, tone2: own },
    });
    expect([much.statusCode, much.json().errors[0].path]).toEqual([413, "parts"]);
    expect(much.json().detail).toContain(String(limits.MAX_ROOM_PAIRS));
    const whole = await post("/api/room", { ...BODY, cavities: [{ name: "a", outline: round(200) }] });
    expect(whole.statusCode).toBe(200);
    const wide = { ...BODY, cavities: [{ name: "a", outline: box(-1000, -1000, 1000, 1000) }] };
    const paper = await post("/api/room/template", wide);
    expect([paper.statusCode, paper.json().errors[0].path]).toEqual([413, "format"]);
    expect(paper.json().detail).toContain(String(limits.MAX_TEMPLATE_PAGES));
  });
});

describe("POST /api/room/template", () => {
  test("draws an SVG whose units are millimetres and whose bar is 100 of them", async () => {
    const answer = await post("/api/room/template", { ...BODY, format: "svg" });
    expect([answer.statusCode, answer.headers["content-type"]]).toEqual([200, "image/svg+xml"]);
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(answer.body)!;
    expect(box).toBe(`0 0 ${width} ${height}`);
    expect(answer.body).toContain('width="100" height="1.5"');
    expect(answer.body).toContain("must measure 100 mm: print at 100 %");
    // A thread of 8 mm, at 55, 75 mm from the bridge's middle, which stands at what the parts nearest the bridge leave.
    const [, x, y] = /<circle class="hole" cx="([\d.]+)" cy="([\d.]+)" r="4"/.exec(answer.body)!;
    const [, bridge] = /<line class="axis" x1="([\d.]+)" y1="0"/.exec(answer.body)!;
    const [, centre] = /<line class="axis" x1="0" y1="([\d.]+)"/.exec(answer.body)!;
    expect(Number(x) - Number(bridge)).toBeCloseTo(55, 3);
    expect(Number(y) - Number(centre)).toBeCloseTo(75, 3);
  });

  test("writes what a person called things as text and never as markup", async () => {
    const build = { ...PLAN, title: 'A "<b>" & B' };
    const { body } = await post("/api/room/template", { ...BODY, build, format: "svg" });
    expect(body).toContain("A &#34;&#60;b&#62;&#34; &#38; B");
    expect(body).not.toContain("<b>");
  });

  test("holds no character that XML cannot, whatever a person called things", async () => {
    const build = { ...PLAN, title: "A\u0000\u0001\u001b\uffffB" };
    const { body } = await post("/api/room/template", { ...BODY, build, format: "svg" });
    expect(body).toContain("A    B");
    // Production 2 of XML 1.0, "Char".
    expect(body).toMatch(/^[\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u);
  });

  test("is the same file each time it is asked for", async () => {
    const [one, other] = [await post("/api/room/template", BODY), await post("/api/room/template", BODY)];
    expect([one.statusCode, one.headers["content-type"]]).toEqual([200, "application/pdf"]);
    expect(one.rawPayload.equals(other.rawPayload)).toBe(true);
  });
});

const DOTS_PER_INCH = 300;

interface Picture {
  readonly width: number;
  readonly height: number;
  /** Whether a dot is dark. */
  isDark(x: number, y: number): boolean;
}

/** A portable greymap, as poppler writes it. */
function readGreymap(bytes: Uint8Array): Picture {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(bytes.subarray(0, 40)).toString("latin1"))!;
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, isDark: (x, y) => bytes[head[0].length + y * width + x]! < 128 };
}

function rendered(pdf: Uint8Array): Picture[] {
  const folder = mkdtempSync(join(tmpdir(), "template-"));
  try {
    writeFileSync(join(folder, "it.pdf"), pdf);
    spawnSync("pdftoppm", ["-gray", "-r", String(DOTS_PER_INCH), join(folder, "it.pdf"), join(folder, "page")]);
    const pages = readdirSync(folder).filter((name) => name.endsWith(".pgm"));
    return pages.sort().map((name) => readGreymap(readFileSync(join(folder, name))));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The longest dark run of a row, in dots. */
function longestRun({ width, isDark }: Picture, y: number): number {
  let [longest, run] = [0, 0];
  for (let x = 0; x < width; x += 1) {
    run = isDark(x, y) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

const dots = (millimetres: number) => Math.round((millimetres / 25.4) * DOTS_PER_INCH);

describeWith("poppler", "the template as it is printed", () => {
  it("has a bar of 100 mm on every one of its pages, to a fifth of a millimetre", async () => {
    const cavities = [{ name: "whole face", outline: box(-120, -150, 180, 150) }];
    const { rawPayload } = await post("/api/room/template", { ...BODY, cavities });
    const pages = rendered(rawPayload);
    expect(pages.length).toBe(4);
    for (const page of pages) {
      // The bar is the lowest long line: it stands 25 to 23 mm above the paper's edge.
      const rows = [24.3, 24].map((up) => page.height - dots(up));
      for (const row of rows) expect(Math.abs((longestRun(page, row) / DOTS_PER_INCH) * 25.4 - 100)).toBeLessThan(0.2);
    }
  });
});
