import { type Child, h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { Bench } from "../start/bench.ts";
import { createAgainstSection } from "./against-section.ts";
import { openDrawerDesk } from "./drawer-desk.ts";
import { createPartsSection } from "./parts-section.ts";
import { createBuildableSection, createChangeSection } from "./service-sections.ts";

const NOT_KEPT =
  "This browser stores nothing for this page: the drawer is there until the page is closed. Save it as a file.";

function section(title: string, hint: string, ...content: Child[]): HTMLElement {
  const heading = h("h3", {}, title);
  return h("section", { class: "stack", "aria-label": title }, heading, h("p", { class: "hint" }, hint), content);
}

/** The person's parts, and what can be made of them. @param leave closes the shelf, for the bench */
export async function createDrawerPanel(bench: Bench, leave: () => void): Promise<HTMLElement> {
  bringStyle("drawer.css");
  const said = h("p", { class: "hint", role: "status" });
  const fault = h("p", { class: "fault-text", role: "alert", hidden: true });
  const say = (words: string) => {
    said.textContent = words;
  };
  const desk = await openDrawerDesk(bench, (message) => {
    fault.textContent = message;
    fault.hidden = message === "";
  });
  const { guards, shopping } = createAgainstSection(desk, say);
  const element = h(
    "div",
    { class: "stack drawer" },
    !desk.lasts && h("p", { class: "caution" }, NOT_KEPT),
    said,
    fault,
    section(
      "What is in the drawer",
      "Count all that you own, soldered in or not: what guards hold is taken off below. What you do not own and know the price of has the count 0.",
      createPartsSection(desk, say),
    ),
    section(
      "Guards against the drawer",
      "Parts soldered into a guard that is wired or in the guitar are not free, until it is taken apart. A measured part serves within the tolerance of the one wanted.",
      guards,
    ),
    section(
      "Shopping list",
      "All ticked guards together; kits and single parts at the least sum of known prices.",
      shopping,
    ),
    section(
      "The cheapest change that is heard",
      "Each part of the guard on the bench exchanged for each that lies free in the drawer or has a price.",
      createChangeSection(desk, leave),
    ),
    section(
      "What can I build from this drawer",
      "Every guard that the free parts allow, by the sounds it has; the service tries them, which may take a minute and can be stopped.",
      createBuildableSection(desk, leave),
    ),
  );
  element.addEventListener("shown", () => void desk.refresh());
  await desk.refresh();
  return element;
}
