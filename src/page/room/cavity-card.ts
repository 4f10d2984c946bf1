import { h, replaceContent } from "../dom/element.ts";
import type { CavityEntry } from "./entries.ts";
import { entryArea, entryText, fieldRow, setEntry } from "./entry-fields.ts";
import type { CardOf } from "./part-card.ts";
import { createTracer } from "./trace/tracer.ts";

const POINTS_HINT = "20, 60\n120, 60\n120, 100\n20, 100";

/** One hole in the body: its line as numbers, or drawn along its edge in a photograph. */
export function cavityCard(
  entry: CavityEntry,
  index: number,
  take: (change: Partial<CavityEntry>) => void,
  drop: () => void,
): CardOf {
  const path = `cavities.${index}`;
  const name = entryText({ path: `${path}.name`, label: "Called", value: entry.name }, (text) => take({ name: text }));
  const depth = entryText({ path: `${path}.depth`, label: "Depth, mm", value: entry.depth }, (text) =>
    take({ depth: text }),
  );
  const tolerance = entryText(
    {
      path: `${path}.tolerance`,
      label: "Its line may be off by, mm",
      value: entry.tolerance,
      placeholder: "as any line",
    },
    (text) => take({ tolerance: text }),
  );
  const points = entryArea(
    {
      path: `${path}.outline`,
      label: "Its line: x, y in mm, a point a line",
      value: entry.points,
      placeholder: POINTS_HINT,
    },
    (text) => take({ points: text }),
  );
  const tracing = h("div", {});
  const trace = h("button", { type: "button", "aria-expanded": "false" }, "Trace it in a photograph");
  trace.addEventListener("click", () => {
    const opens = tracing.childElementCount === 0;
    trace.setAttribute("aria-expanded", String(opens));
    replaceContent(
      tracing,
      opens &&
        createTracer(({ text, off }) => {
          setEntry(points, text);
          setEntry(tolerance, off);
          take({ points: text, tolerance: off });
        }),
    );
  });
  const remove = h("button", { type: "button", onclick: drop }, `Remove cavity ${index + 1}`);
  const element = h(
    "section",
    { class: "room-cavity stack", "aria-label": `Cavity ${index + 1}` },
    fieldRow([name, depth, tolerance]),
    points.element,
    h("div", { class: "buttons" }, trace, remove),
    tracing,
  );
  return { element, fields: [name, depth, tolerance, points] };
}
