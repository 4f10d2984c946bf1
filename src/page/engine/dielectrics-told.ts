import { dielectricsAsked } from "../../bench/dielectrics/asked.ts";
import { dielectricsTold } from "../../bench/dielectrics/dielectrics.ts";
import type { DielectricsTold } from "../../bench/dielectrics/told.ts";
import type { Build } from "../../build-file/schema.ts";

/** As the service answers where no signal is named. */
export function toldOfDielectrics(build: Build, caps: readonly string[]): DielectricsTold {
  return dielectricsTold(dielectricsAsked(build, caps));
}
