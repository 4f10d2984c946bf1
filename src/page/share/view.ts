import type { RawSettings } from "../../build-file/settings.ts";
import type { HandName, StringAge } from "../../render/playing.ts";
import type { AppState, AppStore, FamilyAxis, HeardThrough, LevelView } from "../state/app-state.ts";
import type { BuildSource } from "../state/reading.ts";

/** The usual first. */
const HANDS = ["usual", "bright", "dark"] as const satisfies readonly HandName[];
const USED = "used" satisfies StringAge;
const STRING_AGES = ["new", USED, "old"] as const satisfies readonly StringAge[];

/** The usual first. */
const THROUGH = ["jack", "clean", "own"] as const satisfies readonly HeardThrough[];

/** How the page looked at a build, as a link carries it beside the build. */
export interface View {
  readonly settings?: RawSettings;
  readonly family?: FamilyAxis;
  readonly levelView?: LevelView;
  readonly signal?: string;
  /** Left out where they are the usual ones. */
  readonly hand?: HandName;
  readonly stringAge?: StringAge;
  readonly heardThrough?: HeardThrough;
  readonly drive?: number;
  readonly other?: BuildSource;
}

export function viewOf(state: AppState): View {
  const { settings, family, levelView, signal, hand, stringAge, heardThrough, drive, other } = state;
  const playing = {
    ...(hand !== HANDS[0] && { hand }),
    ...(stringAge !== USED && { stringAge }),
    ...(heardThrough !== THROUGH[0] && { heardThrough, drive }),
  };
  return { settings, family, levelView, signal, ...playing, ...(other ? { other: other.source } : {}) };
}

const FAMILIES: readonly unknown[] = ["tone", "position", "volume", "builds"];
const LEVEL_VIEWS: readonly unknown[] = ["reference", "true"];

/** Takes over what can be taken over; a view may come from another version of the page, or from anybody. */
export function applyView(store: AppStore, view: View): void {
  store.set({
    ...(FAMILIES.includes(view.family) ? { family: view.family! } : {}),
    ...(LEVEL_VIEWS.includes(view.levelView) ? { levelView: view.levelView! } : {}),
    ...(typeof view.signal === "string" ? { signal: view.signal } : {}),
    hand: HANDS.find((hand) => hand === view.hand) ?? HANDS[0],
    stringAge: STRING_AGES.find((age) => age === view.stringAge) ?? USED,
    heardThrough: THROUGH.find((each) => each === view.heardThrough) ?? THROUGH[0],
    drive: Number(view.drive) >= 0 && Number(view.drive) <= 10 ? Number(view.drive) : 0,
  });
}
