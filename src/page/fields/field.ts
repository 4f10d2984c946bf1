import { freshId, h } from "../dom/element.ts";
import { getAt, type Path } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";

/** A place of the build file that can be edited. */
export interface Field {
  readonly path: Path;
  readonly element: HTMLElement;
  /** Shows what the build file says there. */
  show(source: BuildSource): void;
  showFault(message: string | undefined): void;
}

/** Told when a person has finished changing a field; undefined empties it. */
export type Commit = (path: Path, value: unknown) => void;

export interface Labelled {
  readonly path: Path;
  readonly label: string;
  readonly hint?: string;
}

type Control = HTMLInputElement | HTMLSelectElement;

interface Behaviour {
  readonly control: Control;
  readonly toControl: (value: unknown) => void;
  readonly beside?: HTMLElement;
}

/** Label, control, what stands beside it, the hint and the fault under it, tied together for screen readers. */
export function assembleField({ path, label, hint }: Labelled, { control, toControl, beside }: Behaviour): Field {
  const id = freshId("field");
  control.id = id;
  control.dataset.path = path.join(".");
  const fault = h("p", { class: "fault-text", id: `${id}-fault` });
  fault.hidden = true;
  // In sight, not as a tooltip: a thumb has nothing to hover with.
  const about = hint === undefined ? undefined : h("p", { class: "hint", id: `${id}-hint` }, hint);
  const describe = (...by: (HTMLElement | undefined)[]) => {
    const ids = by.flatMap((each) => each?.id ?? []).join(" ");
    if (ids === "") control.removeAttribute("aria-describedby");
    else control.setAttribute("aria-describedby", ids);
  };
  describe(about);
  return {
    path,
    element: h("div", { class: "field" }, h("label", { for: id }, label), control, beside, about, fault),
    show: (source) => toControl(getAt(source, path)),
    showFault: (message) => {
      fault.textContent = message ?? "";
      fault.hidden = message === undefined;
      if (message === undefined) {
        control.removeAttribute("aria-invalid");
        describe(about);
      } else {
        control.setAttribute("aria-invalid", "true");
        describe(fault, about);
      }
    },
  };
}
