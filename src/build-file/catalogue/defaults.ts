import { DEFAULT_SCALE_METRES } from "../../lengths.ts";
import { USUAL_END_OHMS } from "../part-schemas.ts";
import { BRIDGE_SLANT, THREE_PICKUPS, TWO_PICKUPS } from "../plans/places.ts";
import { USUAL_SPACING } from "../plans/plan-pickups.ts";
import { DEFAULT_LOAD_OHMS } from "../schema.ts";
import { AUDIO_MIDPOINT } from "../taper.ts";
import { TRACK_SHAPES } from "../tapers/track-shapes.ts";
import { DEFAULT_TOLERANCES, METER_TOLERANCE } from "../tolerances.ts";
import { USUAL_SCREENED_FARADS_PER_METRE } from "../wire-kinds.ts";

/** What is taken where a build file says nothing. SI units; tolerances are fractions, places metres from the bridge. */
export const DEFAULTS = {
  tolerances: { ...DEFAULT_TOLERANCES, meter: METER_TOLERANCE },
  track: { endResistance: USUAL_END_OHMS, audioMidpoint: AUDIO_MIDPOINT },
  trackShapes: TRACK_SHAPES,
  screenedWire: { capacitance: USUAL_SCREENED_FARADS_PER_METRE },
  load: { resistance: DEFAULT_LOAD_OHMS },
  scale: DEFAULT_SCALE_METRES,
  places: { three: THREE_PICKUPS, two: TWO_PICKUPS, bridgeSlant: BRIDGE_SLANT, coilSpacing: USUAL_SPACING },
} as const;
