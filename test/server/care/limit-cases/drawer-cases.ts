import * as limits from "../../../../src/limits.ts";
import { PLAN } from "../../plan.ts";
import type { Case } from "./limit-case.ts";

/** Of a drawer. */
export const DRAWER_CASES: readonly Case[] = [
  {
    limit: "parts of a drawer",
    send: ({ post }) =>
      post("/api/buildable", {
        drawer: { items: Array(limits.MAX_DRAWER_ITEMS + 1).fill({ part: { kind: "jack" } }) },
      }),
    status: 400,
    path: "drawer.items",
    names: limits.MAX_DRAWER_ITEMS,
  },
  {
    limit: "kits of a drawer",
    send: ({ post }) =>
      post("/api/buildable", {
        drawer: {
          kits: Array(limits.MAX_DRAWER_KITS + 1).fill({ name: "kit", content: [{ part: { kind: "jack" } }] }),
        },
      }),
    status: 400,
    path: "drawer.kits",
    names: limits.MAX_DRAWER_KITS,
  },
  {
    limit: "reels of wire",
    send: ({ post }) =>
      post("/api/buildable", {
        drawer: { wires: Array(limits.MAX_DRAWER_WIRES + 1).fill({ kind: "cloth", length: "1m" }) },
      }),
    status: 400,
    path: "drawer.wires",
    names: limits.MAX_DRAWER_WIRES,
  },
  {
    limit: "price of a part",
    send: ({ post }) =>
      post("/api/buildable", { drawer: { items: [{ part: { kind: "jack" }, price: limits.MAX_PRICE + 1 }] } }),
    status: 400,
    path: "drawer.items.0.price",
    names: limits.MAX_PRICE,
  },
  {
    limit: "soldered guards",
    send: ({ post }) =>
      post("/api/heard-change", {
        build: PLAN,
        drawer: {},
        soldered: Array(limits.MAX_SOLDERED_GUARDS + 1).fill(PLAN),
      }),
    status: 400,
    path: "soldered",
    names: limits.MAX_SOLDERED_GUARDS,
  },
];
