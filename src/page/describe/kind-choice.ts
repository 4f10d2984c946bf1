import type { Dimension } from "../../build-file/units.ts";
import type { Commit, Field } from "../fields/field.ts";
import { choiceField } from "../fields/plain-fields.ts";
import { readQuantity } from "../fields/read-quantity.ts";
import { getAt, type Path, setAt } from "../state/paths.ts";

/** A customary kind of a thing by its values, as they would be written. */
export interface Kind {
  readonly name: string;
  readonly use: string;
  readonly values: Readonly<Record<string, string | undefined>>;
}

type Dimensions = Readonly<Record<string, Dimension>>;

/** The kind that has all of these values; "" where none has. */
export function kindOf(kinds: readonly Kind[], dimensions: Dimensions, value: unknown): string {
  const has = (value ?? {}) as Readonly<Record<string, unknown>>;
  const isSame = ({ values }: Kind) =>
    Object.entries(dimensions).every(([key, each]) => readQuantity(each, values[key]) === readQuantity(each, has[key]));
  return kinds.find(isSame)?.name ?? "";
}

/** Which customary kind the values at `path` are; choosing one writes its values there and leaves what else stands there. */
export function kindChoice(
  spec: {
    readonly path: Path;
    readonly label: string;
    readonly kinds: readonly Kind[];
    readonly dimensions: Dimensions;
  },
  commit: Commit,
): Field {
  const { path, label, kinds, dimensions } = spec;
  let shown: unknown;
  const field = choiceField(
    {
      path,
      label,
      options: [{ value: "", label: "its own values" }, ...kinds.map(({ name, use }) => ({ value: name, label: use }))],
      toSource: (chosen) => kinds.find(({ name }) => name === chosen)?.values,
      fromSource: (value) => kindOf(kinds, dimensions, value),
    },
    (_path, values) => {
      if (values === undefined) return;
      const keys = Object.keys(dimensions);
      commit(
        path,
        keys.reduce((next, key) => setAt(next, [key], (values as Kind["values"])[key]), shown ?? {}),
      );
    },
  );
  // What is wrong with one of its values is told beside that value.
  return {
    ...field,
    path: [...path, "kind"],
    show: (source) => {
      shown = getAt(source, path);
      field.show(source);
    },
  };
}
