import { LugTable } from "../../build-file/lugs.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { partLabel } from "../state/names.ts";

export const LUG_LIST_ID = "lug-names";

/** A lug's name as the build has it where only capitals differ, else the text as written. */
export function lugAsNamed(text: string, names: readonly string[]): string {
  const written = text.trim();
  if (names.includes(written)) return written;
  return names.find((name) => name.toLowerCase() === written.toLowerCase()) ?? written;
}

/** What was typed into a field that offers the lugs. */
export function typedLug(input: HTMLInputElement): string {
  return lugAsNamed(
    input.value,
    [...(input.list?.options ?? [])].map((option) => option.value),
  );
}

/** The names that completion offers: every lug of every part that can be read. */
export function createLugNames(store: AppStore): HTMLElement {
  const list = h("datalist", { id: LUG_LIST_ID });
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (!reading) return;
      const { lugs } = new LugTable(reading.build.parts);
      replaceContent(
        list,
        lugs.map((lug) => h("option", { value: lug.name }, partLabel(reading.build, lug.part))),
      );
    },
  );
  return list;
}
