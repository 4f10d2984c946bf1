import { CATALOGUE } from "../../../build-file/catalogue.ts";
import { freshId, h } from "../../dom/element.ts";
import type { BuildSource } from "../../state/reading.ts";

const FROM_BENCH = "bench:";

function choicesOf(source: BuildSource | undefined) {
  const own = Object.entries(source?.parts ?? {}).flatMap(([name, { kind }]) =>
    kind === "pickup"
      ? [{ value: `${FROM_BENCH}${name}`, label: `the ${name} of the guard on the bench, as measured there` }]
      : [],
  );
  return [...CATALOGUE.pickups.map(({ name, title }) => ({ value: name, label: title })), ...own];
}

/** A pickup of the guard on the bench, without what it is to that guard. */
function fromBench(source: BuildSource, name: string): object {
  const {
    label: _label,
    place: _place,
    leads: _leads,
    ...part
  } = source.parts[name] as { label?: unknown; place?: unknown; leads?: unknown; kind: string };
  return part;
}

function fromCatalogue(type: string): object {
  const { coils, conductors, coupling, metal } = CATALOGUE.pickups.find(({ name }) => name === type)!;
  const said = Object.entries({ conductors, coupling, metal }).filter(([, each]) => each !== undefined);
  return { kind: "pickup", type, coils, ...Object.fromEntries(said) };
}

/** Which pickup: one of the catalogue, or one of the guard on the bench as it was measured there. */
export function createPickupField(source: () => BuildSource | undefined) {
  const id = freshId("pickup");
  const select = h("select", { id });
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, "Which pickup"), select),
    /** Offers what there is now. */
    show: () =>
      select.replaceChildren(...choicesOf(source()).map((each) => h("option", { value: each.value }, each.label))),
    part: (): object =>
      select.value.startsWith(FROM_BENCH)
        ? fromBench(source()!, select.value.slice(FROM_BENCH.length))
        : fromCatalogue(select.value),
  };
}
