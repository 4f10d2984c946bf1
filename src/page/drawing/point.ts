/** A place in drawing units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
