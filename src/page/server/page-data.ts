import type { FirstGuard, PageOffer, StartGuards } from "../../contract/page-data.ts";
import { getBesideThePage } from "./client.ts";

/** What was loaded once stays; a failure is tried again. */
function once<Data>(name: string): () => Promise<Data> {
  let data: Promise<Data> | undefined;
  return () => {
    data ??= getBesideThePage<Data>(name).catch((error) => {
      data = undefined;
      throw error;
    });
    return data;
  };
}

/** The guards that one may start from. */
export const startGuards = once<StartGuards>("guards.json");

/** Their names, and the phrases. */
export const pageOffer = once<PageOffer>("offer.json");

/** The first example, which comes within the page itself. */
export function firstGuard(): FirstGuard {
  return JSON.parse(document.getElementById("first-guard")!.textContent) as FirstGuard;
}
