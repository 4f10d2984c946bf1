import type { RawSettings } from "../../build-file/settings.ts";
import type { AppState, AppStore, FamilyAxis, LevelView } from "../state/app-state.ts";
import type { BuildSource } from "../state/reading.ts";

/** How the page looked at a build, as a link carries it beside the build. */
export interface View {
  readonly settings?: RawSettings;
  readonly family?: FamilyAxis;
  readonly levelView?: LevelView;
  readonly signal?: string;
  readonly other?: BuildSource;
}

export function viewOf({ settings, family, levelView, signal, other }: AppState): View {
  return { settings, family, levelView, signal, ...(other ? { other: other.source } : {}) };
}

const FAMILIES: readonly unknown[] = ["tone", "position", "volume", "builds"];
const LEVEL_VIEWS: readonly unknown[] = ["reference", "true"];

/** Takes over what can be taken over; a view may come from another version of the page, or from anybody. */
export function applyView(store: AppStore, view: View): void {
  store.set({
    ...(FAMILIES.includes(view.family) ? { family: view.family! } : {}),
    ...(LEVEL_VIEWS.includes(view.levelView) ? { levelView: view.levelView! } : {}),
    ...(typeof view.signal === "string" ? { signal: view.signal } : {}),
  });
}
