import * as limits from "../../../../src/limits.ts";
import type { Case } from "./limit-case.ts";

const ANYWHERE = { kind: "anywhere" };
const LOUD = { word: "loud" };

/** Of a sound wanted. */
export const WISH_CASES: readonly Case[] = [
  {
    limit: "characters of wishes in words",
    send: ({ post }) => post("/api/wishes", { text: "a".repeat(limits.MAX_WISH_CHARS + 1) }),
    status: 400,
    path: "text",
    names: limits.MAX_WISH_CHARS,
  },
  {
    limit: "places wished for",
    send: ({ post }) =>
      post("/api/wanted", { wishes: Array(limits.MAX_WISHES + 1).fill({ where: ANYWHERE, asks: [LOUD] }) }),
    status: 400,
    path: "wishes",
    names: limits.MAX_WISHES,
  },
  {
    limit: "words for one place",
    send: ({ post }) =>
      post("/api/wanted", { wishes: [{ where: ANYWHERE, asks: Array(limits.MAX_ASKS + 1).fill(LOUD) }] }),
    status: 400,
    path: "wishes.0.asks",
    names: limits.MAX_ASKS,
  },
];
