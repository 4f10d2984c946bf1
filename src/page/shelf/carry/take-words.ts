import type { ShelfRead } from "../../../shelf/file/read-shelf-file.ts";
import type { Merge } from "../../../shelf/merge.ts";
import { h } from "../../dom/element.ts";

const MAX_SHOWN = 12;

export const counted = (count: number) => `${count} ${count === 1 ? "guard" : "guards"}`;

/** What became of those that came. */
export function resultWords({ added, grown, same }: Merge): string {
  const parts = [
    added.length > 0 && `${counted(added.length)} put on the shelf`,
    grown.length > 0 && `${counted(grown.length)} with more of their history`,
    same > 0 && `${counted(same)} there already`,
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(", ")}.` : "";
}

const placeOf = (path: string) => (path === "" ? "" : `, ${path.replaceAll(".", " › ")}`);

/** Why the drawer in a file was left out. */
export function drawerFaultLine({ path, message }: NonNullable<ShelfRead["drawerFault"]>): HTMLElement {
  const told = h("b", {}, `The drawer in it${placeOf(path)}`);
  return h("p", { class: "fault-text", role: "alert" }, told, ` ${message}, and was left out.`);
}

/** What could not be read, by guard and field. */
export function faultList({ faults }: ShelfRead): HTMLElement | false {
  if (faults.length === 0) return false;
  const items = faults
    .slice(0, MAX_SHOWN)
    .map(({ entry, path, message }) => h("li", {}, h("b", {}, `${entry}${placeOf(path)}`), ` ${message}`));
  const left = faults.length - MAX_SHOWN;
  return h(
    "div",
    { class: "stack", role: "alert" },
    h(
      "p",
      { class: "fault-text" },
      `${counted(faults.length)} could not be read and ${faults.length === 1 ? "was" : "were"} left out:`,
    ),
    h("ul", {}, items, left > 0 && h("li", {}, `and ${left} more`)),
  );
}
