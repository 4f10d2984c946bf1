import { freshId, h, replaceContent } from "../dom/element.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { parseJson } from "../start/parse-json.ts";
import type { Reading } from "../state/reading.ts";

/** A guard that was chosen. */
export interface ChosenGuard {
  readonly build: { readonly title?: string | undefined };
  /** What the passport's notes of it are kept under. */
  readonly title: string;
  /** What was read off a meter, by what was measured; the latest where it was measured more than once. */
  readonly readings: ReadonlyMap<string, string>;
}

interface Choice {
  readonly value: string;
  readonly label: string;
  readonly read: () => Promise<ChosenGuard>;
}

export interface GuardChoice {
  readonly element: HTMLElement;
  /** @throws Error where there is none, or it cannot be read */
  read(): Promise<ChosenGuard>;
}

const titleOf = ({ source }: Reading, otherwise: string) => source.title || otherwise;

async function shelfChoices(): Promise<Choice[]> {
  const shelf = await openShelf();
  const lines = await shelf.list();
  return lines.map(({ id, name, guitar }) => ({
    value: id,
    label: `On the shelf: ${name}${guitar ? ` (${guitar})` : ""}`,
    read: async () => {
      const guard = await shelf.get(id);
      if (!guard) throw new Error(`“${name}” is not on the shelf any more.`);
      const build = parseJson(guard.file) as ChosenGuard["build"];
      const oldestFirst = [...guard.readings].reverse().flatMap(({ values }) => values);
      return {
        build: { ...build, title: name },
        title: build.title ?? "",
        readings: new Map(oldestFirst.map(({ what, read }) => [what, read])),
      };
    },
  }));
}

function benchChoices({ store }: Bench): Choice[] {
  const { reading, other } = store.state;
  const choice = (value: string, label: string, of: Reading | undefined): Choice[] =>
    of
      ? [
          {
            value,
            label: `${label}: ${titleOf(of, "without a title")}`,
            read: async () => ({ build: of.source, title: of.source.title ?? "", readings: new Map() }),
          },
        ]
      : [];
  return [...choice("bench", "On the bench", reading), ...choice("b", "Kept as B", other)];
}

/** One guard of those on the bench, kept as B, and on the shelf. @param usual which is chosen where it is there */
export function createGuardChoice(bench: Bench, label: string, usual: readonly string[]): GuardChoice {
  const id = freshId("guard");
  const select = h("select", { id });
  let choices: Choice[] = [];
  let isTouched = false;
  select.addEventListener("change", () => {
    isTouched = true;
  });
  const show = (next: Choice[]) => {
    const before = select.value;
    choices = next;
    replaceContent(
      select,
      choices.map(({ value, label: words }) => h("option", { value }, words)),
    );
    const wanted = isTouched ? [before, ...usual] : usual;
    const found = wanted.find((value) => choices.some((each) => each.value === value));
    if (found !== undefined) select.value = found;
  };
  let kept: Choice[] = [];
  const renew = async () => {
    show([...benchChoices(bench), ...kept]);
    kept = await shelfChoices();
    show([...benchChoices(bench), ...kept]);
  };
  bench.store.watch(
    (state) => [state.reading, state.other],
    (_reading, _other) => show([...benchChoices(bench), ...kept]),
  );
  void renew();
  void openShelf().then((shelf) => shelf.subscribe(() => void renew()));
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, label), select),
    read: async () => {
      const chosen = choices.find(({ value }) => value === select.value);
      if (!chosen) throw new Error("There is no guard to choose yet: keep one on the shelf or as B first.");
      return chosen.read();
    },
  };
}
