/** 1: the harness; 2: the pickups. */
export type Sitting = 1 | 2;

/** A place for an end, with what it costs to have it there rather than at the best place, in the solver's points. */
export interface Option {
  readonly lug: string;
  readonly points: number;
}

/** An end whose place is open. */
export interface OpenEnd {
  readonly name: string;
  readonly sitting: Sitting;
  readonly options: readonly Option[];
}

export interface LandingProblem {
  readonly open: readonly OpenEnd[];
  /** Ends that stay where they are: how many, by place and sitting. */
  readonly settled: ReadonlyMap<string, readonly [number, number]>;
  /** At most so many ends a joint. */
  readonly maxEnds: number;
  /** Whether a place is heated as a case is: a joint for each sitting, each with its own ends. */
  isCase(lug: string): boolean;
}

export interface Landing {
  /** For each open end the index of its option. */
  readonly choice: readonly number[];
  readonly points: number;
  /** Whether no choice has fewer points; false where the search was given up. */
  readonly isProven: boolean;
}
