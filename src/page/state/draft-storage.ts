import type { RawSettings } from "../../build-file/settings.ts";
import type { AppState, AppStore } from "./app-state.ts";
import { keptAs, whenKept } from "./kept-as.ts";
import type { BuildSource } from "./reading.ts";

const KEY = "presolder.draft.1";
/** Long enough that a knob being turned does not write at every step. */
const WAIT_MS = 300;

export interface Draft {
  readonly source: BuildSource;
  readonly settings: RawSettings;
  readonly other?: BuildSource;
  readonly story?: AppState["story"];
  readonly signal?: string;
  readonly hand?: AppState["hand"];
  readonly stringAge?: AppState["stringAge"];
  readonly heardThrough?: AppState["heardThrough"];
  readonly drive?: number;
  /** The guard of the shelf that it is kept as. */
  readonly kept?: string;
}

export function readDraft(): Draft | undefined {
  try {
    const text = localStorage.getItem(KEY);
    return text === null ? undefined : (JSON.parse(text) as Draft);
  } catch {
    // Storage may be forbidden, or hold what an older page wrote; either way there is no draft.
    return undefined;
  }
}

function writeDraft(state: AppState): void {
  const { source, settings, other, story, signal, hand, stringAge, heardThrough, drive, guard, faults } = state;
  if (!source) return;
  // Of a guard that cannot be read yet, `guard` is still the one before.
  const kept = faults.length === 0 ? keptAs(guard) : undefined;
  const beside = {
    ...(other ? { other: other.source } : {}),
    ...(story ? { story } : {}),
    ...(kept ? { kept } : {}),
  };
  const draft: Draft = { source, settings, signal, hand, stringAge, heardThrough, drive, ...beside };
  try {
    localStorage.setItem(KEY, JSON.stringify(draft));
  } catch {
    // A full or forbidden storage costs the draft's survival, nothing else.
  }
}

/**
 * Keeps what is on the bench through a reload, in this browser only. A guard that came by a link is not one's own yet: it takes
 * the draft's place, and leaves its address, with the first change.
 */
export function keepDraft(store: AppStore): void {
  const isLinked = location.pathname !== "/";
  const linked = isLinked ? store.state.source : undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = () => {
    if (linked !== undefined && store.state.source === linked) return;
    if (location.pathname !== "/") history.replaceState(null, "", "/");
    writeDraft(store.state);
  };
  store.watchAny(
    (state) => [
      state.source,
      state.settings,
      state.other,
      state.story,
      state.signal,
      state.hand,
      state.stringAge,
      state.heardThrough,
      state.drive,
    ],
    () => {
      clearTimeout(timer);
      timer = setTimeout(write, WAIT_MS);
    },
  );
  // At once: a browser that is killed hides no page.
  whenKept(write);
  addEventListener("pagehide", write);
}
