/** Something to have at hand besides the electrical parts. */
export interface HardwareLine {
  readonly what: string;
  /** Null where the build cannot tell how many. */
  readonly quantity: number | null;
  /** Names of the parts that it is for; none where it is for the guard as a whole. */
  readonly for: readonly string[];
  readonly note?: string;
}

/** So many for each of these parts; nothing where the build has none of them. */
export function forEach(parts: readonly string[], each: number, what: string, note?: string): HardwareLine[] {
  return parts.length === 0
    ? []
    : [{ what, quantity: parts.length * each, for: parts, ...(note === undefined ? {} : { note }) }];
}

/** As much or as many as these parts turn out to take. */
export function asNeeded(parts: readonly string[], what: string, note: string): HardwareLine[] {
  return parts.length === 0 ? [] : [{ what, quantity: null, for: parts, note }];
}
