import { joinDrawers } from "../../drawer/join-drawers.ts";
import { drawerInput, isEmptyDrawer, type KeptDrawer } from "../../drawer/kept-drawer.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { drawerFault } from "./drawer-fault.ts";
import { type DrawerKeeper, openDrawer } from "./drawer-keeper.ts";

const counted = ({ length }: readonly unknown[], one: string, many: string) =>
  length === 0 ? [] : [`${length} ${length === 1 ? one : many}`];

/** "4 sorts of part, 1 kit". */
function contentWords({ items, kits, wires }: KeptDrawer): string {
  return [
    ...counted(items, "sort of part", "sorts of part"),
    ...counted(kits, "kit", "kits"),
    ...counted(wires, "reel", "reels"),
  ].join(", ");
}

const isSame = (a: KeptDrawer, b: KeptDrawer) => JSON.stringify(drawerInput(a)) === JSON.stringify(drawerInput(b));

interface Choice {
  readonly label: string;
  readonly words: string;
  readonly of: (here: KeptDrawer, come: KeptDrawer) => KeptDrawer;
}

const CHOICES: readonly Choice[] = [
  {
    label: "Take the drawer that came",
    words: "The drawer is the one that came.",
    of: (here, come) => ({ ...come, counted: { ...here.counted, ...come.counted } }),
  },
  {
    label: "Add to mine what it has besides",
    words: "What it has besides is in your drawer.",
    of: joinDrawers,
  },
  { label: "Leave mine", words: "Your drawer is as it was.", of: (here) => here },
];

/** Says what a choice came to, and takes it back. */
function settled(
  place: HTMLElement,
  keeper: DrawerKeeper,
  words: string,
  before: KeptDrawer,
  isChanged: boolean,
): void {
  const label = isEmptyDrawer(before) ? "Take them out again" : "Bring back the drawer before";
  const bringBack = h("button", { type: "button" }, label);
  bringBack.addEventListener("click", async () => {
    await keeper.edit(() => before);
    replaceContent(place, h("p", {}, "The drawer is as it was before."));
  });
  replaceContent(place, h("p", {}, words), isChanged && h("div", { class: "buttons" }, bringBack));
}

/**
 * Takes in a drawer that came with a shelf: at once where there is none, else as the person says.
 * @param failed told what could not be kept
 */
export async function comeDrawer(
  store: AppStore,
  come: KeptDrawer,
  failed: (error: unknown) => void,
): Promise<HTMLElement> {
  const place = h("div", { class: "stack", role: "status" });
  const fault = await drawerFault(store, come);
  if (fault !== "") {
    replaceContent(place, h("p", { class: "fault-text" }, `The drawer in it was left out: ${fault}`));
    return place;
  }
  const keeper = await openDrawer();
  const here = await keeper.read();
  const take = async ({ of, words }: Choice) => {
    try {
      const before = await keeper.read();
      // Two that are in order may be too much together.
      const tooMuch = await drawerFault(store, of(before, come));
      if (tooMuch !== "") throw new Error(`The drawer was left as it is: ${tooMuch}`);
      const after = await keeper.edit((now) => of(now, come));
      settled(place, keeper, words, before, JSON.stringify(before) !== JSON.stringify(after));
    } catch (error) {
      failed(error);
    }
  };
  if (isEmptyDrawer(here)) {
    await take({ ...CHOICES[0]!, words: `Put into the drawer: ${contentWords(come)}.` });
    return place;
  }
  if (isSame(here, come)) {
    replaceContent(place, h("p", {}, "The drawer in it is the one that is here."));
    return place;
  }
  replaceContent(
    place,
    h("p", {}, `A drawer came with it (${contentWords(come)}); yours has ${contentWords(here)}.`),
    h(
      "div",
      { class: "buttons" },
      CHOICES.map((choice) => h("button", { type: "button", onclick: () => void take(choice) }, choice.label)),
    ),
  );
  return place;
}
