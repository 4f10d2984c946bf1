import { CATALOGUE } from "../../build-file/catalogue.ts";
import type { Commit } from "../fields/field.ts";
import { choiceField } from "../fields/plain-fields.ts";
import type { BuildSource, PartSource } from "../state/reading.ts";

type CoilValues = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** Where a coil sits and what it is measured to be off by belong to the guard, not to the type. */
function keepPlaces(coils: CoilValues, before: CoilValues): CoilValues {
  const old = Object.values(before);
  return Object.fromEntries(
    Object.entries(coils).map(([name, values], index) => {
      const previous = before[name] ?? old[index] ?? old[0] ?? {};
      const { distance, slant } = previous;
      return [name, { ...values, ...(distance ? { distance } : {}), ...(slant ? { slant } : {}) }];
    }),
  );
}

function asType(part: PartSource, typeName: string): PartSource {
  const type = CATALOGUE.pickups.find((each) => each.name === typeName);
  if (!type) return part;
  const { conductors, coupling, metal, type: _, coils: before, ...rest } = part;
  return {
    ...rest,
    kind: "pickup",
    type: type.name,
    coils: keepPlaces(type.coils, (before ?? {}) as CoilValues),
    ...(type.conductors ? { conductors: type.conductors } : {}),
    ...(type.coupling ? { coupling: type.coupling } : {}),
    ...(type.metal ? { metal: type.metal } : {}),
  };
}

/** Sets every value of a pickup to those of a generic type. */
export function createTypePicker(name: string, commit: Commit) {
  let part: PartSource | undefined;
  const field = choiceField(
    {
      path: ["parts", name, "type"],
      label: "Values of",
      options: [
        { value: "", label: "its own values" },
        ...CATALOGUE.pickups.map((type) => ({ value: type.name, label: type.title })),
      ],
    },
    (_path, chosen) => {
      if (!part) return;
      const { type: _, ...rest } = part;
      commit(["parts", name], chosen === undefined ? rest : asType(part, String(chosen)));
    },
  );
  return {
    element: field.element,
    show: (source: BuildSource) => {
      part = source.parts[name];
      field.show(source);
    },
  };
}
