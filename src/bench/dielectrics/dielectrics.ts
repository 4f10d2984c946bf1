import { DIELECTRICS, type Dielectric } from "../../build-file/catalogue/dielectrics.ts";
import type { Build, PartOf } from "../../build-file/schema.ts";
import { Controls, type Settings } from "../../build-file/settings.ts";
import { VERDICT_BASIS } from "../../choice/compare/verdict-basis.ts";
import { type Drive, flatDrive } from "../../choice/drive.ts";
import { Guard } from "../../choice/guard.ts";
import { driftOf, type Fractions } from "../../choice/tolerance/drift.ts";
import { HeldGuard } from "./cap-difference.ts";
import type { AtWorst, CapTold, DielectricRow, DielectricsTold } from "./told.ts";
import { answerWords, capWords } from "./words.ts";

/** A guitar indoors and on stage, °C. */
export const GUITAR_CELSIUS = [10, 35] as const;
/** From 1,000 hours, where caps are marked (EIA-198), to 100,000: eleven years. */
const AGED_DECADES = 2;

export interface DielectricsAsked {
  readonly build: Build;
  readonly caps: readonly string[];
  readonly settings: readonly Settings[];
}

type Cap = PartOf<"cap">;

function guardWith(build: Build, name: string, cap: Cap): Guard {
  const changed = { ...build, parts: { ...build.parts, [name]: cap } };
  return new Guard(changed, undefined, new Controls(changed));
}

/** Without a word on what it is made of. */
function bare({ dielectric: _made, lossFactor: _loss, ...cap }: Cap): Cap {
  return cap;
}

/** What temperature and age may do to a cap, least and most. */
function changeOf(cap: Cap, { ageing }: Dielectric): Fractions {
  const [low, high] = driftOf(cap, GUITAR_CELSIUS)!;
  return [(1 + low) * (1 - ageing) ** AGED_DECADES - 1, high];
}

function rowOf(
  held: HeldGuard,
  asked: { readonly build: Build; readonly name: string; readonly cap: Cap },
  dielectric: Dielectric,
  checkpoint: () => void,
): DielectricRow {
  const { build, name } = asked;
  const cap: Cap = { ...asked.cap, dielectric: dielectric.name };
  const off = (fraction: number) =>
    held.against(guardWith(build, name, { ...cap, capacitance: cap.capacitance * (1 + fraction) }), checkpoint);
  const worst = (within: Fractions): AtWorst => {
    const [low, high] = within.map((fraction) => ({ ...off(fraction), within, off: fraction })) as [AtWorst, AtWorst];
    return Math.abs(low.difference) > Math.abs(high.difference) ? low : high;
  };
  return {
    dielectric: dielectric.name,
    title: dielectric.title,
    loss: dielectric.loss,
    measured: off(0),
    marked: worst(dielectric.tolerance),
    changed: worst(changeOf(cap, dielectric)),
  };
}

/** As measured, and at either end of what is marked and of what changes it. */
const CAPS_A_ROW = 5;

/** How many settings are solved for an answer. */
export function solvedFor({ caps, settings }: DielectricsAsked): number {
  return caps.length * settings.length * (1 + CAPS_A_ROW * DIELECTRICS.length);
}

/**
 * Whether it can be heard what a guard's caps are made of: every dielectric at the same measured value, then at the ends of its usual
 * tolerance, then at those of what temperature and age may do to it, each the largest difference heard over the settings.
 * @param drive of the guard, every band alike where none is given, which hides nothing that strings would leave softer; @param checkpoint called between settings
 */
export function dielectricsTold(
  { build, caps, settings }: DielectricsAsked,
  drive: Drive = flatDrive(),
  checkpoint: () => void = () => {},
): DielectricsTold {
  const told = caps.map((name): CapTold => {
    const cap = bare(build.parts[name] as Cap);
    const held = new HeldGuard(guardWith(build, name, cap), drive, settings);
    const rows = DIELECTRICS.map((each) => rowOf(held, { build, name, cap }, each, checkpoint));
    const figures = { cap: name, capacitance: cap.capacitance, settings: settings.length, rows };
    return { ...figures, says: capWords(figures) };
  });
  return { answer: answerWords(told), caps: told, weighting: drive.name, basis: VERDICT_BASIS };
}
