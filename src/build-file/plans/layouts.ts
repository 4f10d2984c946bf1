/** The guards that a plan can describe, named by their switch and knobs; which pickups go in is the plan's own choice. */

export type Selector = "lever-5" | "lever-3" | "lever-3-pair" | "toggle-3" | "none";

export interface Layout {
  readonly title: string;
  readonly selector: Selector;
  /** From the bridge to the neck. */
  readonly pickups: readonly string[];
  readonly volumes: 1 | 2;
  readonly tones: { readonly min: number; readonly max: number };
}

const THREE = ["bridge", "middle", "neck"];
const TWO = ["bridge", "neck"];

const LAYOUTS = {
  "lever-5-two-tone": {
    title: "Three pickups, five-position lever, one volume, two tones",
    selector: "lever-5",
    pickups: THREE,
    volumes: 1,
    tones: { min: 2, max: 2 },
  },
  "lever-5-one-tone": {
    title: "Three pickups, five-position lever, one volume, one tone or none",
    selector: "lever-5",
    pickups: THREE,
    volumes: 1,
    tones: { min: 0, max: 1 },
  },
  "lever-3-two-tone": {
    title: "Three pickups, three-position lever, one volume, two tones",
    selector: "lever-3",
    pickups: THREE,
    volumes: 1,
    tones: { min: 2, max: 2 },
  },
  "lever-3-two-pickups": {
    title: "Two pickups, three-position lever, one volume, one tone or none",
    selector: "lever-3-pair",
    pickups: TWO,
    volumes: 1,
    tones: { min: 0, max: 1 },
  },
  "toggle-3-one-volume": {
    title: "Two pickups, three-position toggle, one volume, up to two tones",
    selector: "toggle-3",
    pickups: TWO,
    volumes: 1,
    tones: { min: 0, max: 2 },
  },
  "toggle-3-two-volumes": {
    title: "Two pickups, three-position toggle, two volumes, up to two tones",
    selector: "toggle-3",
    pickups: TWO,
    volumes: 2,
    tones: { min: 0, max: 2 },
  },
  "one-pickup": {
    title: "One pickup, one volume, one tone or none",
    selector: "none",
    pickups: ["bridge"],
    volumes: 1,
    tones: { min: 0, max: 1 },
  },
} as const satisfies Record<string, Layout>;

export type LayoutName = keyof typeof LAYOUTS;
export const LAYOUT_NAMES = Object.keys(LAYOUTS) as [LayoutName, ...LayoutName[]];

export function layoutOf(name: LayoutName): Layout {
  return LAYOUTS[name];
}
