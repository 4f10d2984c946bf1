import { EMPTY_DRAWER, type KeptDrawer } from "../../drawer/kept-drawer.ts";
import { shelfWithStorage } from "../shelf/open-shelf.ts";

export interface DrawerKeeper {
  /** False: until the page is closed. */
  readonly lasts: boolean;
  read(): Promise<KeptDrawer>;
  /**
   * Changes what is kept now, which another tab may have changed meanwhile.
   * @throws Error in words where the browser stored nothing
   */
  edit(change: (drawer: KeptDrawer) => KeptDrawer): Promise<KeptDrawer>;
  /** Hears of changes, another tab's too. */
  subscribe(effect: () => void): void;
}

function storedWords(error: unknown): Error {
  const { name, message } = error as Error;
  if (name === "QuotaExceededError")
    return new Error(
      "The browser has no room left for this page, so this was not kept. Save the drawer as a file, then make room.",
    );
  return new Error(
    `The browser did not store this (${message || name}), so it was not kept. Save the drawer as a file.`,
  );
}

async function openKeeper(): Promise<DrawerKeeper> {
  const { database } = await shelfWithStorage();
  const watchers = new Set<() => void>();
  const tellHere = () => {
    for (const effect of watchers) effect();
  };
  const subscribe = (effect: () => void) => void watchers.add(effect);
  if (!database) {
    let drawer = EMPTY_DRAWER;
    const edit = async (change: (drawer: KeptDrawer) => KeptDrawer) => {
      drawer = change(drawer);
      tellHere();
      return drawer;
    };
    return { lasts: false, read: async () => drawer, edit, subscribe };
  }
  const channel = new BroadcastChannel("presolder-drawer");
  channel.addEventListener("message", tellHere);
  return {
    lasts: true,
    read: async () => ({ ...EMPTY_DRAWER, ...(await (await database()).get("drawer", "drawer")) }),
    edit: async (change) => {
      try {
        const transaction = (await database()).transaction("drawer", "readwrite", { durability: "strict" });
        const next = change({ ...EMPTY_DRAWER, ...(await transaction.store.get("drawer")) });
        await transaction.store.put(next);
        await transaction.done;
        channel.postMessage("changed");
        tellHere();
        return next;
      } catch (error) {
        throw storedWords(error);
      }
    },
    subscribe,
  };
}

let opened: Promise<DrawerKeeper> | undefined;

/** The page's one drawer, beside the shelf in the browser's database. */
export function openDrawer(): Promise<DrawerKeeper> {
  opened ??= openKeeper();
  return opened;
}
