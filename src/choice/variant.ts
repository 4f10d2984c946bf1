import type { Build, Part } from "../build/schema.ts";

/**
 * One value of a build changed. `part` is a part's name, or null for the build's own `cable` and `load`; `field` is the
 * dotted path within it: `resistance`, `coils.slug.inductance`, `gangs.0.resistance`, `cable.length`.
 */
export interface Patch {
  readonly part: string | null;
  readonly field: string;
  readonly value: number;
}

type Tree = { readonly [key: string]: unknown } | readonly unknown[];

function isTree(value: unknown): value is Tree {
  return typeof value === "object" && value !== null;
}

function withValue(tree: Tree, path: readonly string[], value: number): Tree {
  const [key = "", ...rest] = path;
  const inner = (tree as Record<string, unknown>)[key];
  const changed = rest.length === 0 ? value : withValue(isTree(inner) ? inner : {}, rest, value);
  if (Array.isArray(tree)) return tree.map((item, index) => (index === Number(key) ? changed : item));
  return { ...tree, [key]: changed };
}

/** The build with the patches applied; whatever they do not touch is shared with the original. */
export function withPatches(build: Build, patches: readonly Patch[]): Build {
  let parts = build.parts;
  let rest: Tree = build;
  for (const { part, field, value } of patches) {
    const path = field.split(".");
    if (part === null) rest = withValue(rest, path, value);
    else parts = { ...parts, [part]: withValue(parts[part]!, path, value) as unknown as Part };
  }
  return { ...(rest as Build), parts };
}

/** The number a patch would replace, or undefined where the build has none there. */
export function valueAt(build: Build, part: string | null, field: string): number | undefined {
  let at: unknown = part === null ? build : build.parts[part];
  for (const key of field.split("."))
    at = isTree(at) && Object.hasOwn(at, key) ? (at as Record<string, unknown>)[key] : undefined;
  return typeof at === "number" ? at : undefined;
}
