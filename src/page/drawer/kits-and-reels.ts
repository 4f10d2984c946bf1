import { parseQuantity } from "../../build-file/quantity.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { drawerInput, type KeptDrawer, type KeptKit, type KeptReel, keptFrom } from "../../drawer/kept-drawer.ts";
import { openKit } from "../../drawer/open-kit.ts";
import { newId } from "../../shelf/new-guard.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { DrawerTold } from "../engine/drawer-answer.ts";
import { formText } from "../fields/form-fields.ts";
import { countFault, priceFault, priceIn } from "./form/value-faults.ts";

type Change = (drawer: KeptDrawer) => KeptDrawer;
type Edit = (change: Change) => void;

const small = (text: string, label: string, onclick: () => void, disabled = false) =>
  h("button", { type: "button", class: "small", "aria-label": label, onclick, disabled }, text);

/** A kit of the drawer opened: its content as parts, entries of before with the ids they had. */
function opened(drawer: KeptDrawer, id: string): KeptDrawer {
  const index = drawer.kits.findIndex((kit) => kit.id === id);
  const next = keptFrom(openKit(drawerInput(drawer), index), newId);
  const items = next.items.map((item, at) => ({ ...item, id: drawer.items[at]?.id ?? item.id }));
  return { ...drawer, items, kits: drawer.kits.map((kit, at) => ({ ...next.kits[at]!, id: kit.id })) };
}

function kitRow(kit: KeptKit, words: string, money: string, edit: Edit): HTMLElement {
  const { id, name } = kit;
  const count = kit.count ?? 1;
  const change = (by: (kit: KeptKit) => KeptKit) =>
    edit((drawer) => ({ ...drawer, kits: drawer.kits.map((each) => (each.id === id ? by(each) : each)) }));
  const price = kit.price === undefined ? "price not known" : `${kit.price} ${money}`;
  return h(
    "li",
    { class: "drawer-kit" },
    h("p", {}, h("b", {}, name), ` · ${count} owned · ${price}`),
    h("p", { class: "hint" }, words === "" ? "empty yet: choose it under “Goes into” and put parts in" : words),
    h(
      "div",
      { class: "buttons" },
      small("One more", `One more of ${name}`, () => change((each) => ({ ...each, count: (each.count ?? 1) + 1 }))),
      small(
        "One fewer",
        `One fewer of ${name}`,
        () => change((each) => ({ ...each, count: (each.count ?? 1) - 1 })),
        count === 0,
      ),
      small("Open one", `Open one of ${name}`, () => edit((drawer) => opened(drawer, id)), count === 0 || words === ""),
      small("Take out", `Take out ${name}`, () =>
        edit((drawer) => ({ ...drawer, kits: drawer.kits.filter((each) => each.id !== id) })),
      ),
    ),
  );
}

/** "2 m", whether a unit was written or not. */
const lengthText = (length: string | number) => showQuantity(parseQuantity(length, "length").value, "length");

function reelRow({ id, kind, colour, length, price }: KeptReel, money: string, edit: Edit): HTMLElement {
  const what = `${[colour, kind].filter(Boolean).join(" ")} wire`;
  const cost = price === undefined ? "" : `, ${price} ${money} a metre`;
  const remove = () => edit((drawer) => ({ ...drawer, wires: drawer.wires.filter((each) => each.id !== id) }));
  return h(
    "li",
    { class: "drawer-reel" },
    `${what}, ${lengthText(length)}${cost} `,
    small("Take out", `Take out ${what}`, remove),
  );
}

/** Kits, each one thing with a content, and wire by the metre. */
export function createKitsAndReels(edit: Edit) {
  const list = h("ul", { class: "drawer-list" });
  const reels = h("ul", { class: "drawer-list" });
  const name = formText("kit.name", "A kit's name", "", "wiring kit");
  const price = formText("kit.price", "Price of the kit", "", "25");
  const count = formText("kit.count", "How many owned", "0");
  const add = (event: Event) => {
    event.preventDefault();
    const faults = [
      name.read() === "" ? "expected a name" : undefined,
      priceFault(price.read()),
      countFault(count.read(), 0),
    ];
    for (const [index, field] of [name, price, count].entries()) field.showFault(faults[index]);
    if (faults.some((fault) => fault !== undefined)) return;
    const priced = price.read() === "" ? {} : { price: priceIn(price.read()) };
    const kit: KeptKit = {
      id: newId(),
      name: name.read(),
      count: Number(count.read()),
      content: [],
      ...priced,
    };
    edit((drawer) => ({ ...drawer, kits: [...drawer.kits, kit] }));
  };
  const element = h(
    "div",
    { class: "stack" },
    list,
    reels,
    h(
      "form",
      { class: "drawer-form", "aria-label": "A new kit", onsubmit: add },
      name.element,
      price.element,
      count.element,
      h("button", { type: "submit" }, "Add the kit"),
    ),
  );
  const show = ({ kits, wires, currency }: KeptDrawer, words: (kit: KeptKit) => string) => {
    replaceContent(
      list,
      kits.map((kit) => kitRow(kit, words(kit), currency, edit)),
    );
    replaceContent(
      reels,
      wires.map((reel) => reelRow(reel, currency, edit)),
    );
  };
  return { element, show };
}

/** What is in a kit, in words. */
export function kitWords(told: DrawerTold | undefined, index: number): string {
  return (told?.kits[index]?.content ?? []).map(({ what, count }) => `${count} × ${what}`).join("; ");
}
