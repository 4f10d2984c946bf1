import * as limits from "../../../../src/limits.ts";
import { PLAN } from "../../plan.ts";
import type { Case } from "./limit-case.ts";

const screws = (count: number) =>
  Object.fromEntries(
    Array.from({ length: count }, (_, n) => [`p${n}`, { bass: { gap: "2mm" }, treble: { gap: "2mm" } }]),
  );
const levels = (count: number) => Array.from({ length: count }, () => ({ settings: {}, strings: [0, 0, 0, 0, 0, 0] }));

/** Of the bench's questions. */
export const BENCH_CASES: readonly Case[] = [
  {
    limit: "caps asked about",
    send: ({ post }) => post("/api/dielectrics", { build: PLAN, caps: Array(limits.MAX_ASKED_CAPS + 1).fill("cap1") }),
    status: 400,
    path: "caps",
    names: limits.MAX_ASKED_CAPS,
  },
  {
    limit: "meter probes",
    send: ({ post }) =>
      post("/api/bench", {
        build: PLAN,
        probes: Array(limits.MAX_PROBES + 1).fill({ between: ["jack.tip", "jack.sleeve"] }),
      }),
    status: 400,
    path: "probes",
    names: limits.MAX_PROBES,
  },
  {
    limit: "lugs of a switch",
    send: ({ post }) =>
      post("/api/switch", {
        lugs: Array.from({ length: limits.MAX_SWITCH_LUGS + 1 }, (_, n) => String(n)),
        positions: 2,
      }),
    status: 400,
    path: "lugs",
    names: limits.MAX_SWITCH_LUGS,
  },
  {
    limit: "touches told of a switch",
    send: ({ post }) =>
      post("/api/switch", {
        lugs: ["1", "2"],
        positions: 2,
        beeps: Array(limits.MAX_TOUCHES + 1).fill({ between: ["1", "2"], positions: [1] }),
      }),
    status: 400,
    path: "beeps",
    names: limits.MAX_TOUCHES,
  },
  {
    limit: "pickups on screws",
    send: ({ post }) => post("/api/heights", { build: PLAN, pickups: screws(limits.MAX_MOVED_PICKUPS + 1) }),
    status: 400,
    path: "pickups",
    names: limits.MAX_MOVED_PICKUPS,
  },
  {
    limit: "rows of levels",
    send: ({ post }) => post("/api/heights", { build: PLAN, levels: levels(limits.MAX_HEIGHT_ROWS + 1) }),
    status: 400,
    path: "levels",
    names: limits.MAX_HEIGHT_ROWS,
  },
];
