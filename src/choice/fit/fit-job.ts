import type { Checkpoint } from "../../checkpoint.ts";
import { fitImpedance, type ImpedanceTable, type KnownBeside } from "./fit-impedance.ts";
import type { Fit } from "./fit-problem.ts";
import { fitResonances, type ResonanceReading, type ResonanceSetup } from "./fit-resonances.ts";
import { fitResponse, type KnownLoad, type ResponseTable } from "./fit-response.ts";
import { fitTwoLoads } from "./fit-two-loads.ts";
import { loadNotes } from "./load-notes.ts";
import type { RatioSweep } from "./loaded-ratio.ts";

/** A fit as plain data, by what was measured. */
export type FitJob =
  | { readonly method: "impedance"; readonly table: ImpedanceTable; readonly known: KnownBeside }
  | { readonly method: "response"; readonly table: ResponseTable; readonly known: KnownLoad }
  | { readonly method: "two-loads"; readonly sweeps: readonly RatioSweep[]; readonly known: KnownBeside }
  | { readonly method: "resonances"; readonly readings: readonly ResonanceReading[]; readonly setup: ResonanceSetup };

function withLoadNotes(sweeps: readonly RatioSweep[], known: KnownBeside): Fit {
  const fit = fitTwoLoads(sweeps, known);
  const refit = (others: readonly RatioSweep[]) => fitTwoLoads(others, { ...known, models: [fit.loss] });
  return { ...fit, notes: [...fit.notes, ...loadNotes(fit, sweeps, refit)] };
}

/** @throws PresolderError DATA_INSUFFICIENT with what to measure besides */
export function runFit(job: FitJob, { checkpoint }: Checkpoint): Fit {
  switch (job.method) {
    case "impedance":
      return fitImpedance(job.table, { ...job.known, checkpoint });
    case "response":
      return fitResponse(job.table, { ...job.known, checkpoint });
    case "two-loads":
      return withLoadNotes(job.sweeps, { ...job.known, checkpoint });
    case "resonances":
      return fitResonances(job.readings, { ...job.setup, checkpoint });
  }
}
