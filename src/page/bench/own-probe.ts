import { MAX_PROBES } from "../../limits.ts";
import { lugInWords, namedLug, offerLugNames } from "../describe/lug-names.ts";
import { lugInput } from "../describe/wire-row.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { createFaultLine } from "../fields/fault-line.ts";
import type { AppStore, OwnProbe } from "../state/app-state.ts";
import { lugComplaint, probeComplaint } from "./probes.ts";

interface LugField {
  readonly element: HTMLElement;
  readonly input: HTMLInputElement;
  /** The lug's name; undefined, with the reason beside the field, where the guard has none of that name. */
  read(): string | undefined;
}

function lugField(store: AppStore, label: string): LugField {
  const input = lugInput(label);
  const { element: fault, tell } = createFaultLine(input, freshId("probe-fault"));
  return {
    element: h("div", { class: "field" }, h("span", { class: "hint" }, label), input, fault),
    input,
    read: () => {
      const { reading } = store.state;
      const lug = namedLug(store, input.value);
      if (!reading) return undefined;
      const message = lug === "" ? "name a lug, such as “jack, tip”" : lugComplaint(reading, lug);
      tell(message);
      return message === undefined ? lug : undefined;
    },
  };
}

function setProbes(store: AppStore, probes: readonly OwnProbe[]): void {
  store.set({ benchOptions: { ...store.state.benchOptions, probes } });
}

/** The readings asked for, each with a way to take it out again. */
function probeList(store: AppStore): HTMLElement {
  const list = h("ul", { class: "told no-print" });
  const item = (probe: OwnProbe) => {
    const { reading } = store.state;
    const name = probe.between.map((lug) => lugInWords(store, lug)).join(" to ");
    const complaint = reading && probeComplaint(reading, probe);
    const remove = () =>
      setProbes(
        store,
        store.state.benchOptions.probes.filter((each) => each !== probe),
      );
    return h(
      "li",
      {},
      name,
      complaint && h("span", { class: "hint" }, ` (${complaint})`),
      " ",
      h("button", { type: "button", class: "quiet", "aria-label": `Take out ${name}`, onclick: remove }, "Take out"),
    );
  };
  store.watch(
    (state) => [state.benchOptions, state.reading] as const,
    ({ probes }, _reading) => {
      list.hidden = probes.length === 0;
      replaceContent(list, probes.map(item));
    },
  );
  return list;
}

/** Adds a reading between any two lugs, in the setting on the bench. */
export function createOwnProbe(store: AppStore): HTMLElement {
  offerLugNames(store);
  const [from, to] = [lugField(store, "First probe on"), lugField(store, "Second probe on")];
  const full = h("p", { class: "fault-text", hidden: true }, `At most ${MAX_PROBES} readings; take one out first.`);
  const add = (event: Event) => {
    event.preventDefault();
    const [first, second] = [from.read(), to.read()];
    const { benchOptions, settings } = store.state;
    full.hidden = benchOptions.probes.length < MAX_PROBES;
    if (first === undefined || second === undefined || !full.hidden) return;
    setProbes(store, [...benchOptions.probes, { between: [first, second], settings }]);
    from.input.value = "";
    to.input.value = "";
  };
  return h(
    "div",
    { class: "stack no-print" },
    h(
      "form",
      { class: "row add-row", onsubmit: add, "aria-label": "Between any two lugs" },
      h("p", { class: "hint" }, "Between any two lugs, as the guard is set now:"),
      from.element,
      to.element,
      h("button", { type: "submit" }, "Add this reading"),
    ),
    full,
    probeList(store),
  );
}
