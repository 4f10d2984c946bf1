import type { Build } from "../../build-file/schema.ts";
import { dielectricsAsked } from "../../choice/dielectrics/asked.ts";
import { dielectricsTold } from "../../choice/dielectrics/dielectrics.ts";
import type { DielectricsTold } from "../../choice/dielectrics/told.ts";
import { flatDrive } from "../../choice/drive.ts";

/** As the service answers where no signal is named. */
export function toldOfDielectrics(build: Build, caps: readonly string[]): DielectricsTold {
  return dielectricsTold(dielectricsAsked(build, caps), flatDrive());
}
