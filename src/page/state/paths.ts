export type Path = readonly (string | number)[];

export function getAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? (inner as Record<string, unknown>)[key] : undefined),
    value,
  );
}

/** A copy with one place changed; undefined takes the key away. */
export function setAt<T>(value: T, path: Path, next: unknown): T {
  const [key, ...rest] = path;
  if (key === undefined) return next as T;
  const inner = rest.length === 0 ? next : setAt(getAt(value, [key]) ?? {}, rest, next);
  if (Array.isArray(value)) return value.map((each, index) => (index === Number(key) ? inner : each)) as T;
  const copy = { ...(value as Record<string, unknown>) };
  if (inner === undefined) delete copy[key];
  else copy[key] = inner;
  return copy as T;
}
