import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { speechOf } from "../words/lug-speech.ts";

export const LUG_LIST_ID = "lug-names";

/** The lug that was named in words or by its code; the text as it was written where the guard has none of that name. */
export function namedLug({ state }: AppStore, text: string): string {
  return (state.reading && speechOf(state.reading).words.find(text)) ?? text.trim();
}

/** What a lug is called in a field: words where the guard has it, else as it is written. */
export function lugInWords({ state }: AppStore, lug: string): string {
  return state.reading ? speechOf(state.reading).words.of(lug) : lug;
}

/** Has every lug of every part that can be read offered wherever one is to be named, its code beside it. */
export function offerLugNames(store: AppStore): void {
  if (document.getElementById(LUG_LIST_ID)) return;
  const list = h("datalist", { id: LUG_LIST_ID });
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (!reading) return;
      const lugs = [...speechOf(reading).words.entries()];
      replaceContent(
        list,
        lugs.map(([code, words]) => h("option", { value: words }, code)),
      );
    },
  );
  document.body.append(list);
}
