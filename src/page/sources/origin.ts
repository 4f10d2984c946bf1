/** A value that is the catalogue's: where it stands there, and how it is said. */
export interface Origin {
  /** A path into the catalogue, or the beginning of several. */
  readonly of: string;
  /** "2.4 H", "the usual tolerance". */
  readonly shown: string;
}
