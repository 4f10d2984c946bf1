import * as limits from "../../../../src/limits.ts";
import { threeSingles } from "../../../fixtures/circuits.ts";
import { PLAN } from "../../plan.ts";
import type { Case } from "./limit-case.ts";

const parts = () =>
  Object.fromEntries(Array.from({ length: limits.MAX_PARTS + 1 }, (_, n) => [`t${n}`, { kind: "terminal" }]));
const wires = () => Array.from({ length: limits.MAX_WIRES + 1 }, () => ["jack.tip", "jack.sleeve"]);
const numbers = (count: number) => Array.from({ length: count }, (_, n) => (10 * n) / count);
const long = threeSingles();

/** Of a build, its settings and its curves. */
export const BUILD_CASES: readonly Case[] = [
  {
    limit: "parts",
    send: ({ post }) => post("/api/expand", { build: { ...long, parts: parts() } }),
    status: 400,
    path: "build.parts",
    names: limits.MAX_PARTS,
  },
  {
    limit: "wires",
    send: ({ post }) => post("/api/expand", { build: { ...long, wires: wires() } }),
    status: 400,
    path: "build.wires",
    names: limits.MAX_WIRES,
  },
  {
    limit: "settings of a sweep",
    send: ({ post }) => post("/api/response", { build: PLAN, sweep: { tone: numbers(11), volume: numbers(91) } }),
    status: 413,
    path: "sweep",
    names: limits.MAX_SETTINGS,
  },
  {
    limit: "loss of a cap",
    send: ({ post }) =>
      post("/api/expand", { build: { ...long, parts: { c: { kind: "cap", capacitance: 1e-9, lossFactor: 1 } } } }),
    status: 400,
    path: "build.parts.c.lossFactor",
    names: limits.MAX_LOSS_FACTOR,
  },
  {
    limit: "frequencies",
    send: ({ post }) => post("/api/response", { build: PLAN, frequencies: { count: limits.MAX_FREQUENCIES + 1 } }),
    status: 400,
    path: "frequencies.count",
    names: limits.MAX_FREQUENCIES,
  },
  {
    limit: "points of all curves",
    send: ({ post }) =>
      post("/api/response", {
        build: PLAN,
        sweep: { tone: numbers(123) },
        frequencies: { count: limits.MAX_FREQUENCIES },
      }),
    status: 413,
    path: "frequencies",
    names: limits.MAX_POINTS,
  },
  {
    limit: "points of each coil's own curves",
    send: ({ post }) =>
      post("/api/response", {
        build: PLAN,
        sweep: { tone: numbers(25) },
        frequencies: { count: limits.MAX_FREQUENCIES },
        sources: true,
      }),
    status: 413,
    path: "frequencies",
    names: limits.MAX_POINTS,
  },
  {
    limit: "characters of a link code",
    send: ({ inject }) => inject({ url: `/api/link/1${"A".repeat(limits.MAX_LINK_CODE_CHARS)}` }),
    status: 400,
    path: "code",
    names: limits.MAX_LINK_CODE_CHARS,
  },
  {
    limit: "fewest draws",
    send: ({ post }) => post("/api/tolerance", { build: PLAN, draws: limits.MIN_DRAWS - 1 }),
    status: 400,
    path: "draws",
    names: limits.MIN_DRAWS,
  },
  {
    limit: "most draws",
    send: ({ post }) => post("/api/tolerance", { build: PLAN, draws: limits.MAX_DRAWS + 1 }),
    status: 400,
    path: "draws",
    names: limits.MAX_DRAWS,
  },
];
