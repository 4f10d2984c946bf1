import { capitalised, listed } from "../../english.ts";
import { type Hookup, hookupsOf, metalIsHot, usualWay, type Wanted } from "./hookups.ts";
import type { Question } from "./question.ts";
import type { Labelling } from "./weigh.ts";
import { coilWords, leadsAt } from "./words.ts";

const MAGNET_REMEDY =
  "Only a magnet turned over changes that. Where one loose bar magnet lies under each coil it may be turned; rods are never pulled out of a coil.";

function soundWords({ aids, cancelsHum }: Hookup): string {
  if (cancelsHum === null) return "One coil: it hums as any single coil does.";
  if (aids && cancelsHum) return "The coils aid each other and cancel hum.";
  if (aids) return `The coils aid each other, and their hum adds. ${MAGNET_REMEDY}`;
  return cancelsHum
    ? "The coils cancel hum, and most of each other's sound with it: thin and weak."
    : "The coils are against each other: thin and weak.";
}

function hookupText(question: Question, labelling: Labelling, hookup: Hookup): string {
  const { name, coil, hot, ground, link, insulate } = hookup;
  const titles = {
    "single coil": "The pickup",
    series: "Both coils in series",
    parallel: "Both coils side by side",
    "joined inside": "Both coils, as they are joined inside",
    "one coil of two": coil === null ? "" : `Only ${coilWords(question, labelling.structure, coil)}`,
  };
  const parts = [
    link.length > 0 && `solder ${listed(link)} together and to nothing else, and insulate the joint`,
    `${listed(hot)} to hot`,
    `${listed(ground)} to ground`,
    insulate.length > 0 && `insulate ${listed(insulate)}, each by itself`,
  ].filter((part) => part !== false);
  return `${titles[name]}: ${parts.join("; ")}. ${soundWords(hookup)}`;
}

function metalText(question: Question, labelling: Labelling, main: Hookup): string | null {
  const { structure, places } = labelling;
  if (structure.metalAt < 0) return null;
  const names = listed(leadsAt(question, places, structure.metalAt));
  if (structure.places[structure.metalAt]!.ends.length === 0)
    return `${capitalised(names)} is the metal's own lead: to ground, whatever else is done.`;
  return metalIsHot(question, labelling, main)
    ? `The metal is soldered to ${names} inside, which is not at ground here: cut that jumper and run the metal to ground on its own, or it hums and buzzes when it is touched.`
    : `The metal is soldered to ${names} inside and is at ground with it; keep ${names} at ground, or cut that jumper first.`;
}

/** What keeps a pickup from being wired whole. */
export function whyNot(question: Question, { structure }: Labelling): string {
  const broken = structure.broken.flatMap((isBroken, coil) => (isBroken ? [coilWords(question, structure, coil)] : []));
  return broken.length > 0
    ? `${capitalised(listed(broken))} ${broken.length > 1 ? "are" : "is"} open inside: look for a lead that came off its end, and do not unwind anything.`
    : "One end of a coil has no lead: look where a lead broke off.";
}

export function wiringOf(question: Question, labelling: Labelling, wanted: Wanted = usualWay(question, labelling)) {
  const [main, ...others] = hookupsOf(question, labelling, wanted);
  const say = (hookup: Hookup) => ({ ...hookup, text: hookupText(question, labelling, hookup) });
  const isWhole = main !== undefined && main.name !== "one coil of two";
  return {
    main: isWhole ? say(main) : null,
    alternatives: (isWhole ? others : main ? [main, ...others] : []).map(say),
    metal: main ? metalText(question, labelling, main) : null,
    text: isWhole ? say(main).text : whyNot(question, labelling),
  };
}

/** The same for labellings that are wired alike. */
export function wiringKey(question: Question, labelling: Labelling): string {
  const [main] = hookupsOf(question, labelling, usualWay(question, labelling));
  if (!main) return "";
  const sorted = (leads: readonly string[]) => [...leads].sort().join(" ");
  // What is hot and what is ground may trade places in a pickup by itself.
  const outer = [sorted(main.hot), sorted(main.ground)].sort().join(" / ");
  return `${main.name} | ${outer} | ${sorted(main.link)} | ${sorted(main.insulate)}`;
}
