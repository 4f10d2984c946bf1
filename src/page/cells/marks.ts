/** Shapes about the origin, of radius about 1, each told from the others without its colour. */
const SHAPES = [
  ["circle", "M-.9 0A.9.9 0 1 1 .9 0A.9.9 0 1 1-.9 0Z"],
  ["square", "M-.8-.8H.8V.8H-.8Z"],
  ["triangle", "M0-1.05L1 .75H-1Z"],
  ["diamond", "M0-1.15L1.15 0L0 1.15L-1.15 0Z"],
  ["triangle pointing down", "M0 1.05L1-.75H-1Z"],
  ["plus", "M-.35-1H.35V-.35H1V.35H.35V1H-.35V.35H-1V-.35H-.35Z"],
  ["hexagon", "M-1 0L-.5-.87H.5L1 0L.5.87H-.5Z"],
  ["star", "M0-1.2L.3-.35H1.15L.48.2L.72 1.05L0 .55L-.72 1.05L-.48.2L-1.15-.35H-.3Z"],
] as const;

const COLOURS = 6;

/** How one of several guards or cells is marked. */
export interface Mark {
  readonly shape: string;
  readonly path: string;
  /** Of the style sheet's `--cell-0` and on. */
  readonly colour: number;
}

/** Marks of neighbours differ in shape and in colour; 24 are all different. */
export function markOf(index: number): Mark {
  const [shape, path] = SHAPES[index % SHAPES.length]!;
  return { shape, path, colour: index % COLOURS };
}
