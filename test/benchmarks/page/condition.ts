/** What the page is met with: the size of its window in CSS pixels, and how many times slower it computes than the machine. */
export interface Condition {
  readonly name: "plain" | "slowed";
  readonly width: number;
  readonly height: number;
  readonly slowdown: number;
}

export const PLAIN: Condition = { name: "plain", width: 1280, height: 900, slowdown: 1 };

export const CONDITIONS: readonly Condition[] = [PLAIN, { name: "slowed", width: 390, height: 844, slowdown: 4 }];
