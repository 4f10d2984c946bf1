import type { Build } from "../build-file/schema.ts";

/**
 * One value of a build changed. `part` is a part's name, or null for the build's own `cable` and `load`; `field` is the
 * dotted path within it: `resistance`, `coils.slug.inductance`, `gangs.0.resistance`, `cable.length`.
 */
export interface Patch {
  readonly part: string | null;
  readonly field: string;
  readonly value: number;
}

type Tree = Record<string, unknown>;

function isTree(value: unknown): value is Tree {
  return typeof value === "object" && value !== null;
}

/** A copy of a build whose trees are copied as they are first written to. */
class Copy {
  readonly #own = new Set<unknown>();

  ownCopy(tree: unknown): Tree {
    if (this.#own.has(tree)) return tree as Tree;
    const copy = (Array.isArray(tree) ? [...tree] : { ...(isTree(tree) ? tree : {}) }) as Tree;
    this.#own.add(copy);
    return copy;
  }

  /** @param tree a copy of our own */
  write(tree: Tree, path: readonly string[], value: number): void {
    let at = tree;
    for (const key of path.slice(0, -1)) {
      const inner = this.ownCopy(at[key]);
      at[key] = inner;
      at = inner;
    }
    at[path.at(-1)!] = value;
  }
}

/** The build with the patches applied; whatever they do not touch is shared with the original. */
export function withPatches(build: Build, patches: readonly Patch[]): Build {
  const copy = new Copy();
  const whole = copy.ownCopy(build);
  for (const { part, field, value } of patches) {
    const path = part === null ? field.split(".") : ["parts", part, ...field.split(".")];
    copy.write(whole, path, value);
  }
  return whole as Build;
}

/** The number a patch would replace, or undefined where the build has none there. */
export function valueAt(build: Build, part: string | null, field: string): number | undefined {
  let at: unknown = part === null ? build : build.parts[part];
  for (const key of field.split("."))
    at = isTree(at) && Object.hasOwn(at, key) ? (at as Record<string, unknown>)[key] : undefined;
  return typeof at === "number" ? at : undefined;
}
