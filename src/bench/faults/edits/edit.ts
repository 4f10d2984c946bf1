/** One change that a fault makes. Lugs are indexes in the build's table, wires in its list, parts by name. */
export type Edit =
  /** The wire is missing, or open at either end. */
  | { readonly edit: "cut"; readonly wire: number }
  /** One end of a wire sits on another lug. */
  | { readonly edit: "move"; readonly wire: number; readonly end: "from" | "to"; readonly lug: number }
  /** The lug's joint is open: its wires still hold together, off the lug. */
  | { readonly edit: "lift"; readonly lug: number }
  /** The wire has resistance in it, a joint's or a strand's. */
  | { readonly edit: "resist-wire"; readonly wire: number; readonly ohms: number }
  /** The lug's wires meet it through a resistance: its joint's, its wiper's, the end of its track. */
  | { readonly edit: "resist-lug"; readonly lug: number; readonly ohms: number }
  /** Two lugs touch. */
  | { readonly edit: "bridge"; readonly lugs: readonly [number, number] }
  /** A switch contact never meets this lug. */
  | { readonly edit: "dead-contact"; readonly control: number; readonly lug: number }
  | { readonly edit: "coil-open"; readonly part: string; readonly coil: string }
  | { readonly edit: "coil-shorted"; readonly part: string; readonly coil: string }
  /** A winding of another resistance. */
  | { readonly edit: "coil-resistance"; readonly part: string; readonly coil: string; readonly factor: number }
  /** A track or resistor of another value. */
  | { readonly edit: "resistance"; readonly part: string; readonly gang: number; readonly factor: number }
  /** A capacitor of another value; 0 is an open one. */
  | { readonly edit: "capacitance"; readonly part: string; readonly factor: number }
  /** A pot of another taper. */
  | { readonly edit: "taper"; readonly part: string; readonly taper: "linear" | "audio" }
  /** A switch whose every position joins what the drawing's position of that number joins, counted from 1. */
  | { readonly edit: "positions"; readonly control: number; readonly order: readonly number[] };
