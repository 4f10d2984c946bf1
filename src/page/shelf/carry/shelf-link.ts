import type { Guard } from "../../../shelf/guard.ts";
import { packed } from "../../../shelf/packed.ts";
import { freshId, h } from "../../dom/element.ts";
import { postJson } from "../../server/client.ts";

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Not allowed without https, or by the person; the address stands in the field, selected.
    return false;
  }
}

/** A place for a link that carries guards in itself. */
export function createShelfLink(): { readonly element: HTMLElement; make(guards: readonly Guard[]): Promise<void> } {
  const id = freshId("shelf-link");
  const field = h("input", { id, type: "text", readonly: true, class: "link-field" });
  const told = h("p", { class: "hint", role: "status" });
  const element = h("div", { class: "field", hidden: true }, h("label", { for: id }, "The link"), field, told);
  /** @throws ServiceProblem where they do not fit into a link */
  const make = async (guards: readonly Guard[]) => {
    element.hidden = true;
    const { url } = await postJson("/api/shelf-link", { guards: guards.map(packed) });
    field.value = url;
    element.hidden = false;
    field.select();
    const what = `It carries ${guards.length === 1 ? "this guard" : `${guards.length} guards`} with readings and notes, without their histories.`;
    told.textContent = (await copied(url)) ? `Copied. ${what}` : `Copy it from here. ${what}`;
  };
  return { element, make };
}
