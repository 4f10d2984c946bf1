import { showOhms } from "../../../bench/meter/shown.ts";
import { type Child, s } from "../../dom/element.ts";
import type { LeadsTold } from "../../engine/leads-told.ts";

type Labelling = LeadsTold["labellings"][number];
type Coil = Labelling["coils"][number];

const WIDTH = 420;
const COIL = { x: 140, width: 140, height: 50, pitch: 84, top: 34 };
const POLES = 6;
/** Under this a name or a pole wears a question mark. */
const SURE = 0.9;
/** Beyond this relative error a resistance is a guess. */
const MEASURED_WITHIN = 0.03;

const topOf = (index: number) => COIL.top + index * COIL.pitch;
const middleOf = (index: number) => topOf(index) + COIL.height / 2;
const text = (x: number, y: number, className: string, anchor: string, ...content: Child[]) =>
  s("text", { x, y, class: className, "text-anchor": anchor }, ...content);

/** How much of the listed belief has this pole up. */
function poleShare({ labellings }: LeadsTold, index: number, magnet: Coil["magnet"]): number {
  const all = labellings.filter(({ coils }) => coils[index]);
  const sum = (some: typeof all) => some.reduce((total, { probability }) => total + probability, 0);
  return sum(all.filter(({ coils }) => coils[index]!.magnet === magnet)) / sum(all);
}

function poles(index: number): SVGElement[] {
  const step = COIL.width / (POLES + 1);
  return Array.from({ length: POLES }, (_, pole) =>
    s("circle", { cx: COIL.x + step * (pole + 1), cy: middleOf(index), r: 6, class: "lead-pole" }),
  );
}

function coilBody(told: LeadsTold, coil: Coil, index: number): SVGElement[] {
  const isSure = poleShare(told, index, coil.magnet) >= SURE;
  const pole = `${coil.magnet} pole up${isSure ? "" : "?"}`;
  const isMeasured = (coil.resistanceError ?? 0) < MEASURED_WITHIN;
  const about = isMeasured ? "" : "perhaps ";
  const ohms = coil.resistance === null ? "open inside" : `${about}${showOhms(coil.resistance)}`;
  return [
    s("rect", {
      x: COIL.x,
      y: topOf(index),
      width: COIL.width,
      height: COIL.height,
      rx: COIL.height / 2,
      class: coil.broken ? "lead-coil lead-broken" : "lead-coil",
    }),
    ...poles(index),
    text(WIDTH / 2, topOf(index) - 6, "lead-word", "middle", `${coil.row}: ${ohms}, ${pole}`),
  ];
}

/** A lead by its name, with a question mark where it may well be another. */
function leadName({ leads }: LeadsTold, lead: string): string {
  const best = leads.find((each) => each.lead === lead)?.may[0]?.probability ?? 1;
  return `${lead}${best >= SURE ? "" : "?"}`;
}

/** An end of a coil with its lead: start on the left, finish on the right. */
function coilEnd(told: LeadsTold, lead: string | null, index: number, side: -1 | 1): SVGElement[] {
  const at = side < 0 ? COIL.x : COIL.x + COIL.width;
  const out = at + side * 64;
  const y = middleOf(index);
  const anchor = side < 0 ? "end" : "start";
  const name = lead === null ? "no lead" : leadName(told, lead);
  return [
    s("line", { x1: at, y1: y, x2: out, y2: y, class: lead === null ? "lead-wire lead-hidden" : "lead-wire" }),
    text(out + side * 6, y + 1, "lead-name", anchor, name),
    text(out + side * 6, y + 17, "lead-word", anchor, side < 0 ? "start" : "finish"),
  ];
}

/** Which ends of two coils the maker joined, told in words under the picture, since lines over coils read as wires. */
function joinedWords({ joined, tap }: Labelling): string {
  if (joined === "series") return `joined inside, ${tap === null ? "the joint hidden" : `the joint on ${tap}`}`;
  return joined === "parallel" ? "joined inside, side by side" : "";
}

function metalWords(told: LeadsTold): string {
  const { metal } = told.labellings[0]!;
  if (metal.at === "unreached") return "";
  const leads = metal.leads.map((lead) => leadName(told, lead)).join(" with ");
  return metal.at === "drain" ? `metal: ${leads} (drain)` : `metal: joined to ${leads} inside`;
}

function looseWords({ leads }: Labelling): string {
  const loose = leads.filter(({ is }) => is.startsWith("joined to nothing")).map(({ lead }) => lead);
  return loose.length > 0 ? `joined to nothing: ${loose.join(", ")}` : "";
}

/** The likeliest labelling at a glance. */
export function pickupPicture(told: LeadsTold): SVGElement {
  const best = told.labellings[0]!;
  const notes = [joinedWords(best), metalWords(told), looseWords(best)].filter(Boolean);
  const bottom = topOf(best.coils.length - 1) + COIL.height;
  const height = bottom + 24 + notes.length * 20;
  return s(
    "svg",
    {
      viewBox: `0 0 ${WIDTH} ${height}`,
      class: "lead-picture",
      role: "img",
      "aria-label": `The likeliest: ${best.text}`,
    },
    best.metal.at !== "unreached" &&
      s("rect", { x: 88, y: 8, width: WIDTH - 176, height: bottom + 4, rx: 12, class: "lead-metal" }),
    best.coils.flatMap((coil, index) => [
      ...coilBody(told, coil, index),
      ...coilEnd(told, coil.start, index, -1),
      ...coilEnd(told, coil.finish, index, 1),
    ]),
    notes.map((note, index) => text(WIDTH / 2, bottom + 32 + index * 20, "lead-word", "middle", note)),
  );
}
