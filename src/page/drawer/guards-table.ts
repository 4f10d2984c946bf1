import type { GuardState } from "../../shelf/guard.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { GuardTold } from "../engine/drawer-answer.ts";

/** A guard as the drawer's panel knows it. */
export interface DrawerGuard {
  readonly id: string;
  readonly name: string;
  readonly state: GuardState | "on the bench";
  readonly file: string;
  readonly isCounted: boolean;
  readonly isOnList: boolean;
}

interface Ticks {
  count(id: string, isCounted: boolean): void;
  list(id: string, isOnList: boolean): void;
  take(id: string, name: string): void;
}

const tick = (label: string, checked: boolean, onTick: (checked: boolean) => void) => {
  const box = h("input", { type: "checkbox", checked });
  box.addEventListener("change", () => onTick(box.checked));
  return h("label", { class: "tick", "aria-label": label }, box);
};

function missingView({ lines, wanted, missing, fault, isSoldered }: GuardTold): HTMLElement | string {
  if (fault !== "") return h("span", { class: "fault-text" }, `cannot be read: ${fault}`);
  if (isSoldered) return `${wanted - missing} of ${wanted} parts are in the drawer's count`;
  if (missing === 0) return "nothing";
  const lacking = lines.filter(({ there, wanted: needed }) => there < needed);
  return h(
    "details",
    {},
    h("summary", {}, `${missing} of ${wanted} parts`),
    h(
      "ul",
      {},
      lacking.map(({ what, wanted: needed, there, heldBy }) =>
        h(
          "li",
          {},
          `${needed - there} × ${what}${heldBy.length > 0 ? `; one that would serve is soldered into ${heldBy.join(", ")}` : ""}`,
        ),
      ),
    ),
  );
}

/** One that is only wanted has no parts yet. */
const HAS_PARTS: readonly DrawerGuard["state"][] = ["wired", "in the guitar", "retired"];

function takeButton({ id, name }: DrawerGuard, { take }: Ticks): HTMLElement {
  const label = "Take its parts into the drawer";
  return h(
    "button",
    { type: "button", class: "small", "aria-label": `${label}: ${name}`, onclick: () => take(id, name) },
    label,
  );
}

/** Every guard beside the drawer: what it lacks, whether it holds parts, whether it is shopped for. */
export function guardsTable(guards: readonly DrawerGuard[], told: readonly GuardTold[], ticks: Ticks): HTMLElement {
  const rows = guards.map((guard, index) => {
    const of = told[index]!;
    return [
      guard.name,
      guard.state,
      h(
        "div",
        { class: "stack" },
        missingView(of),
        of.fault === "" && HAS_PARTS.includes(guard.state) && takeButton(guard, ticks),
      ),
      tick(`Parts of ${guard.name} are soldered in and counted`, guard.isCounted, (on) => ticks.count(guard.id, on)),
      guard.isCounted || of.fault !== ""
        ? "–"
        : tick(`Shop for ${guard.name}`, guard.isOnList, (on) => ticks.list(guard.id, on)),
    ];
  });
  return plainTable(
    "Guards against the drawer",
    ["Guard", "State", "Lacks", "Soldered in, counted", "Shop for it"],
    rows,
  );
}
