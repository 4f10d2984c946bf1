import type { WantedRequest } from "../../contract/wanted.ts";
import { h } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";
import type { Bench } from "../start/bench.ts";
import type { FromDrawer } from "./from-drawer.ts";

const STARTS = [
  { value: "all", label: "any customary guard" },
  { value: "own", label: "this guard's own plan" },
  { value: "both", label: "both" },
] as const;

/** What the search begins with. */
interface Begun {
  readonly plan?: { readonly pickups: object };
  readonly starts?: "all";
}

export interface Options {
  readonly request: Partial<WantedRequest>;
  /** Where the search is held to the drawer. */
  readonly drawer: FromDrawer | undefined;
}

/** Where guards are looked for. */
export interface SearchOptions {
  readonly element: HTMLElement;
  /** @throws Error in words, where something does not go */
  read(): Promise<Options>;
}

export function createSearchOptions(bench: Bench): SearchOptions {
  const { store, engine } = bench;
  const starts = formChoice("starts", "Begin with", STARTS);
  const switches = h("input", { type: "checkbox", checked: true });
  const ofDrawer = h("input", { type: "checkbox" });

  /** @throws Error where the guard on the bench is wired by no plan */
  const ownPlan = async () => {
    const answer = await engine.planOf(store.state.reading!.source, undefined);
    if (answer.plan !== null) return answer.plan;
    throw new Error(`The guard on the bench is wired by no plan, so it cannot be begun with: ${answer.why}`);
  };

  const begin = async (): Promise<Begun> => {
    const chosen = starts.read();
    if (chosen === "all") return {};
    return { plan: await ownPlan(), ...(chosen === "both" ? { starts: "all" as const } : {}) };
  };

  const drawerFor = async ({ plan, starts: customary }: Begun) => {
    if (!ofDrawer.checked) return undefined;
    const { fromDrawer } = await import("./from-drawer.ts");
    return fromDrawer(bench, plan && !customary ? Object.keys(plan.pickups) : undefined);
  };

  return {
    element: h(
      "div",
      { class: "field-row" },
      starts.element,
      h("label", { class: "wanted-check" }, switches, "Add switches to the best"),
      h("label", { class: "wanted-check" }, ofDrawer, "Only pickups, pots and caps of my drawer"),
    ),
    read: async () => {
      const begun = await begin();
      const drawer = await drawerFor(begun);
      const { reading } = store.state;
      // As they are written; what the service cannot read it refuses by name.
      const { cable, load } = (reading?.source ?? {}) as Pick<WantedRequest, "cable" | "load">;
      const around = { ...(cable ? { cable } : {}), ...(load ? { load } : {}) };
      return { request: { switches: switches.checked, ...around, ...begun, ...drawer?.limits }, drawer };
    },
  };
}
