import type { DrawerRequest, PartsListAnswer } from "../../../contract/bench/bench.ts";
import { h } from "../../dom/element.ts";

/** What the drawer holds beyond the build's needs; what no line of the list counts can be taken out here. */
export function staysOverView(
  { lines, staysOver }: PartsListAnswer,
  drawer: readonly DrawerRequest[],
  takeOut: (items: readonly DrawerRequest[]) => void,
): HTMLElement | undefined {
  if (staysOver.length === 0) return undefined;
  const isOfLine = (index: number) => lines.some((line) => line.drawer.includes(index));
  const item = ({ what, code, quantity, drawer: indexes }: PartsListAnswer["staysOver"][number]) => {
    const remove = () => takeOut(indexes.map((index) => drawer[index]!));
    return h(
      "li",
      {},
      `${quantity} × ${what}${code === null ? "" : `, printed ${code}`} `,
      !isOfLine(indexes[0]!) &&
        h(
          "button",
          { type: "button", class: "small no-print", "aria-label": `Take out ${what}`, onclick: remove },
          "Take out",
        ),
    );
  };
  return h(
    "section",
    { class: "stack", "aria-label": "Stays over" },
    h("h4", {}, "Stays over in the drawer"),
    h("ul", { class: "told" }, staysOver.map(item)),
  );
}
