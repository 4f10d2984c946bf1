import type { Guard, GuardLine } from "../../shelf/guard.ts";

export interface Changes {
  readonly put: readonly Guard[];
  readonly remove: readonly string[];
}

/** Where the shelf's guards lie. */
export interface Keeper {
  lines(): Promise<readonly GuardLine[]>;
  /** Those changed last, the latest first. */
  latest(count: number): Promise<readonly GuardLine[]>;
  /** Of some ids, or all. */
  guards(ids?: readonly string[]): Promise<readonly Guard[]>;
  /**
   * One transaction: nothing else changes these guards between what `edit` is given and what it makes of them.
   * @param edit told the guards of `ids` that are there
   * @throws DOMException as the browser's storage throws it; nothing is changed then
   */
  update(ids: readonly string[], edit: (there: ReadonlyMap<string, Guard>) => Changes): Promise<Changes>;
}
