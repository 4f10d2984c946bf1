import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { type Settings, settingsKey } from "../../build-file/settings.ts";
import { NOTHING } from "../departures/departure.ts";
import { Point, Unknowns } from "../model/point.ts";
import { rigUnknowns } from "../model/rig-unknowns.ts";
import { unknownsOf } from "../model/unknowns.ts";
import type { Question } from "../question.ts";
import type { Placement, Take } from "../takes/take.ts";
import { DriveLevels } from "./drive-levels.ts";
import type { Evidence } from "./evidence.ts";
import type { Laid } from "./exciter-drive.ts";
import { ExciterEvidence } from "./exciter-evidence.ts";
import { placementUnknowns } from "./exciter-reach.ts";
import { JackEvidence } from "./jack-evidence.ts";
import { TapEvidence } from "./tap-evidence.ts";
import { loudestOf, usualDriveOf } from "./usual-drive.ts";
import { Weigher } from "./weigher.ts";
import { WindingSense } from "./winding-sense.ts";

/** Takes of one coil are one placement: the exciter stays where it is while the settings change. */
function laidOf(takes: readonly Take[], indexOf: (settings: Settings) => number): Laid[] {
  const byCoil = new Map<string, { placement: Placement; takes: Laid["takes"][number][] }>();
  for (const take of takes) {
    if (take.through === "jack") continue;
    const { pickup, coil } = take.through;
    const found = byCoil.get(`${pickup}.${coil}`) ?? { placement: take.through, takes: [] };
    found.takes.push({ take, settingIndex: indexOf(take.settings) });
    byCoil.set(`${pickup}.${coil}`, found);
  }
  return [...byCoil.values()];
}

function placementsOf(build: Build, laid: readonly Laid[]) {
  const coils = partsOfKind(build, "pickup").flatMap(([pickup, part]) =>
    Object.keys(part.coils).map((coil): Placement => ({ pickup, coil })),
  );
  return laid.flatMap(({ placement, takes }) =>
    placementUnknowns(
      placement,
      takes.map(({ take: { hasReference }, settingIndex }) => ({ settingIndex, hasReference })),
      coils.filter(({ pickup }) => pickup !== placement.pickup),
    ),
  );
}

/** Everything that was recorded, ready to weigh departures by. */
export interface Weighing {
  readonly weigher: Weigher;
  readonly unknowns: Unknowns;
  /** What each take says; an exciter's takes of one placement say it together. */
  readonly ofTakes: readonly Evidence[];
  readonly settings: readonly Settings[];
  readonly settingOf: (take: Take) => number;
}

export function weighingOf(build: Build, { takes, rig, taps }: Pick<Question, "takes" | "rig" | "taps">): Weighing {
  const settings: Settings[] = [];
  const indexes = new Map<string, number>();
  const indexOf = (each: Settings) => {
    const key = settingsKey(each);
    if (!indexes.has(key)) indexes.set(key, settings.push(each) - 1);
    return indexes.get(key)!;
  };
  for (const take of takes) indexOf(take.settings);
  const laid = laidOf(takes, indexOf);
  const own = [...rigUnknowns(rig), ...unknownsOf(build, settings), ...placementsOf(build, laid)];
  const unknowns = new Unknowns(own, rig);
  const atJack = takes.flatMap((take) =>
    take.through === "jack" ? [new JackEvidence(take, indexOf(take.settings))] : [],
  );
  const drawn = new Weigher(build, settings, unknowns, []).subjectAt(NOTHING, new Point(unknowns));
  const [usual, loudest] = [usualDriveOf(laid, drawn), loudestOf(laid)];
  const exciters = laid.map((each) => new ExciterEvidence(each, usual, loudest));
  const together = exciters.length > 1 ? [new WindingSense(exciters), new DriveLevels(exciters)] : [];
  const tapped = taps ? [new TapEvidence(taps.heard, taps.input)] : [];
  const evidence: Evidence[] = [...atJack, ...exciters, ...together, ...tapped];
  const ofTakes = takes.map((take) => {
    const at = atJack.find((each) => each.take === take);
    return at ?? exciters.find(({ laid: { takes: own } }) => own.some((each) => each.take === take))!;
  });
  const weigher = new Weigher(build, settings, unknowns, evidence);
  return { weigher, unknowns, ofTakes, settings, settingOf: ({ settings: each }) => indexOf(each) };
}
