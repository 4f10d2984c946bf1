import { DatabaseKeeper } from "./database-keeper.ts";
import { KeptShelf, type Wire } from "./kept-shelf.ts";
import { MemoryKeeper } from "./memory-keeper.ts";
import type { Shelf } from "./shelf.ts";
import type { ShelfDatabase } from "./shelf-database.ts";

function betweenTabs(): Wire {
  const channel = new BroadcastChannel("presolder-shelf");
  return {
    tell: (ids) => channel.postMessage(ids),
    hear: (effect) => channel.addEventListener("message", ({ data }) => effect(data as readonly string[])),
  };
}

export interface OpenShelf {
  readonly shelf: Shelf;
  /** The browser's own words for why it stores nothing; empty where it does. */
  readonly refusal: string;
  /** Where the browser stores. */
  readonly database: (() => Promise<ShelfDatabase>) | undefined;
}

async function open(): Promise<OpenShelf> {
  const keeper = new DatabaseKeeper();
  try {
    await keeper.database();
    return { shelf: new KeptShelf(keeper, true, betweenTabs()), refusal: "", database: () => keeper.database() };
  } catch (error) {
    const refusal = (error as Error).message || (error as Error).name;
    return { shelf: new KeptShelf(new MemoryKeeper(), false), refusal, database: undefined };
  }
}

let opened: Promise<OpenShelf> | undefined;

/** The shelf with how it is kept; the same one for the whole page. */
export function shelfWithStorage(): Promise<OpenShelf> {
  opened ??= open();
  return opened;
}

/** The page's shelf. It is there in any case: where the browser refuses to store, until the page is closed. */
export async function openShelf(): Promise<Shelf> {
  return (await shelfWithStorage()).shelf;
}
