import type { ToldLevel, ToldPosition, ToldRemedy } from "../../listening/noise/noise-told.ts";
import type { RemedyName } from "../../listening/noise/remedies.ts";
import { showDb } from "../curves/units.ts";
import { type Child, h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { NoiseReply } from "../engine/noise-asked.ts";

export type Weighting = "flat" | "A";

/** Of the bars: what nobody hears, and what is as loud as the string a third away. */
const BAR_FROM_DB = -100;
const BAR_TO_DB = -20;
/** Less is nothing, beside a string as in itself. */
const LEAST_DB = -110;
const LEAST_MICROVOLTS = 0.001;
/** How hum beside a string is heard; choices, no source. */
const HEARD: readonly (readonly [fromDb: number, words: string])[] = [
  [-45, "plain in every pause"],
  [-60, "heard in pauses"],
  [-75, "heard turned up"],
];
/** A change that nobody hears. */
const LEAST_CHANGE_DB = 0.5;

const nameOf = ({ position, label, sounds }: ToldPosition) =>
  position === null ? `${sounds || label}` : `${position}: ${sounds}`;

function microvolts(value: number): string {
  if (value < LEAST_MICROVOLTS) return "none";
  return `${value >= 100 ? Math.round(value) : Number(value.toPrecision(2))}\u00a0µV`;
}

function levelOf({ microvolts: flat, decibels, microvoltsA, decibelsA }: ToldLevel, weighting: Weighting) {
  return weighting === "flat" ? { volts: flat, db: decibels } : { volts: microvoltsA, db: decibelsA };
}

const areaWords = (squareCentimetres: number) => `${Number(squareCentimetres.toPrecision(2))}\u00a0cm²`;

/** "plain in every pause", by what the ear makes of it. */
function heardWords({ hum, hiss }: ToldPosition): string {
  const { decibelsA, microvoltsA } = hum.sum;
  if (decibelsA === null) return "no string beside it";
  if (microvoltsA < hiss.sum.microvoltsA) return "under the hiss";
  return HEARD.find(([from]) => decibelsA >= from)?.[1] ?? "hardly heard";
}

function levelCell(level: ToldLevel, weighting: Weighting): Child {
  const { volts, db } = levelOf(level, weighting);
  if (db === null) return microvolts(volts);
  if (volts < LEAST_MICROVOLTS || db < LEAST_DB) return "none";
  const share = Math.min(1, Math.max(0, (db - BAR_FROM_DB) / (BAR_TO_DB - BAR_FROM_DB)));
  return h(
    "span",
    { class: "noise-level" },
    h("span", {}, `${showDb(db, 0).replace(" ", "\u00a0")}, ${microvolts(volts)}`),
    h("span", { class: "noise-bar", "aria-hidden": "true", style: `--share: ${share.toFixed(3)}` }),
  );
}

/** Where the noise of every position comes from. */
export function levelsTable({ positions }: NoiseReply, weighting: Weighting): HTMLElement {
  return plainTable(
    `Hum and hiss beside a strummed chord${weighting === "A" ? ", A-weighted" : ""}`,
    ["Position", "Hum in all", "Is", "Of coils", "Of loops of wire", "Of open wires", "Hiss"],
    positions.map((position) => {
      const { hum, hiss } = position;
      const cell = (level: ToldLevel) => levelCell(level, weighting);
      const loops = h("span", {}, cell(hum.loops), ` of ${areaWords(position.loopArea)}`);
      return [
        nameOf(position),
        cell(hum.sum),
        heardWords(position),
        cell(hum.coils),
        loops,
        cell(hum.runs),
        cell(hiss.sum),
      ];
    }),
  );
}

const WAYS: readonly (readonly [RemedyName, string])[] = [
  ["shielded-cavity", "Shielded cavity"],
  ["reverse-wound", "Reverse-wound pickup"],
  ["twisted-pair", "Twisted pairs"],
  ["screened-wire", "Screened wire"],
];

function changeWords({ remedies, hum, hiss }: ToldPosition, name: RemedyName, weighting: Weighting): string {
  const found: ToldRemedy | undefined = remedies.find((each) => each.name === name);
  if (!found) return "not here";
  const change = weighting === "flat" ? found.change : found.changeA;
  if (change === null || Math.abs(change) < LEAST_CHANGE_DB) return "nothing";
  const covered = hum.sum.microvoltsA < hiss.sum.microvoltsA ? ", under the hiss already" : "";
  return `${showDb(change, 0)}${change < 0 ? covered : ""}`;
}

/** What each change would take of a position's hum. */
export function remediesTable({ positions, reverseWound }: NoiseReply, weighting: Weighting): HTMLElement {
  const ways = WAYS.map(([, words]) => words);
  const which = reverseWound === null ? "" : `; reverse wound: ${reverseWound}`;
  return plainTable(
    `What would help against the hum${which}`,
    ["Position", ...ways],
    positions.map((position) => [nameOf(position), ...WAYS.map(([name]) => changeWords(position, name, weighting))]),
  );
}
