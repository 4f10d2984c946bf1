import type { FirstGuard, PageData } from "../../contract/page-data.ts";
import { getBesideThePage } from "./client.ts";

let data: Promise<PageData> | undefined;

/** The guards that one may start from, and the phrases. */
export function pageData(): Promise<PageData> {
  data ??= getBesideThePage<PageData>("guards.json").catch((error) => {
    data = undefined;
    throw error;
  });
  return data;
}

/** The first example, which comes within the page itself. */
export function firstGuard(): FirstGuard {
  return JSON.parse(document.getElementById("first-guard")!.textContent) as FirstGuard;
}
