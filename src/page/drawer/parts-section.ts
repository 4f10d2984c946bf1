import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import { newId } from "../../shelf/new-guard.ts";
import { type Child, h, replaceContent } from "../dom/element.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import type { DrawerDesk } from "./drawer-desk.ts";
import { drawerFault } from "./drawer-fault.ts";
import { createDrawerFiles } from "./drawer-files.ts";
import { createEntryRows } from "./entry-rows.ts";
import { createKitsAndReels, kitWords } from "./kits-and-reels.ts";
import { createPartForm, type NewEntry } from "./part-form.ts";

const MAX_CURRENCY_CHARS = 12;

/** The drawer with one entry more. @param kit into which it goes; empty for the drawer itself */
function withEntry(drawer: KeptDrawer, entry: NewEntry, kit: string): KeptDrawer {
  const id = newId();
  if (entry.kind === "reel") return { ...drawer, wires: [...drawer.wires, { ...entry.reel, id }] };
  const { item } = entry;
  if (kit === "") return { ...drawer, items: [...drawer.items, { ...item, id }] };
  const held = { part: item.part, count: Math.max(1, item.count ?? 1) };
  const kits = drawer.kits.map((each) => (each.id === kit ? { ...each, content: [...each.content, held] } : each));
  return { ...drawer, kits };
}

/** What lies in the drawer: parts, kits, wire, in what money, and its file. */
export function createPartsSection(desk: DrawerDesk, say: (words: string) => void): Child[] {
  const into = formChoice("into", "Goes into", [{ value: "", label: "the drawer" }]);
  const currency = formText("currency", "Prices are in", "", "my own money");
  currency.element.addEventListener("change", () => {
    const words = currency.read().slice(0, MAX_CURRENCY_CHARS);
    void desk.edit((drawer) => ({ ...drawer, currency: words }));
  });
  const edit = (change: (drawer: KeptDrawer) => KeptDrawer) => void desk.edit(change);
  const rows = createEntryRows(edit, say);
  const kits = createKitsAndReels(edit);
  const files = createDrawerFiles(
    () => desk.view.drawer,
    async (drawer) => {
      if (!(await desk.edit(() => drawer))) throw new Error("the browser did not keep it");
    },
    (drawer) => drawerFault(desk.bench.store, drawer),
    say,
  );
  const form = createPartForm(
    () => desk.bench.store.state.source,
    into,
    async (entry) => void (await desk.edit((drawer) => withEntry(drawer, entry, into.read()))),
  );
  const select = into.element.querySelector("select")!;
  const money = currency.element.querySelector("input")!;
  desk.watch(({ drawer, told }) => {
    rows.show(drawer, told);
    kits.show(drawer, (kit) => kitWords(told, drawer.kits.indexOf(kit)));
    const chosen = select.value;
    const named = drawer.kits.map(({ id, name }) => h("option", { value: id }, `the kit “${name}”`));
    replaceContent(select, h("option", { value: "" }, "the drawer"), named);
    select.value = drawer.kits.some(({ id }) => id === chosen) ? chosen : "";
    if (document.activeElement !== money) money.value = drawer.currency;
  });
  return [form, rows.element, h("h4", {}, "Kits and wire"), kits.element, currency.element, files];
}
