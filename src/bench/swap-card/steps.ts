import { listed } from "../../english.ts";
import { CAUTIONS } from "../sheet/cautions.ts";
import type { Anchor, Leaving, LettingGo } from "./connections.ts";

export interface SwapStep {
  readonly title: string;
  readonly text: string;
}

export type HowLetGo = Readonly<Record<Anchor, LettingGo>>;

/** Whether anything is soldered on the guitar itself, for which the iron's cautions are shown. */
export function needsIron(leaving: readonly Leaving[], how: HowLetGo): boolean {
  return leaving.some(({ anchor }) => how[anchor] === "solder");
}

const ALWAYS = 2;
const COLD: readonly string[] = [
  "Strings and the claw's springs are under tension and can put out an eye: slacken the strings before the guard is lifted, and wear eye protection.",
  "A magnet snatches a screwdriver: lay tape or a card over the coils while you turn screws beside them.",
  "First listen at low volume, and turn up slowly.",
];

/** Common practice, no source. */
export function cautionsFor(leaving: readonly Leaving[], ...how: readonly HowLetGo[]): readonly string[] {
  return how.some((each) => needsIron(leaving, each)) ? CAUTIONS : [...CAUTIONS.slice(0, ALWAYS), ...COLD];
}

const LET_GO: Readonly<Record<LettingGo, (words: string) => string>> = {
  solder: (words) => `Unsolder it at ${words}; leave the solder there for the next one.`,
  plug: (words) => `Pull its plug by the body, not by the wires, at ${words}.`,
  along: (words) => `Unscrew ${words} and let it come along with the guard.`,
};
const TAKE_UP: Readonly<Record<LettingGo, (words: string) => string>> = {
  solder: (words) => `Solder it to ${words}.`,
  plug: (words) => `Push its plug home at ${words}; tug lightly: it holds.`,
  along: (words) => `Screw ${words} down where the old one was.`,
};

/** The lugs of one anchor in one line, as each lug is only let go once. */
function connectionSteps(leaving: readonly Leaving[], how: HowLetGo, words: typeof LET_GO, verb: string): SwapStep[] {
  const anchors = [...new Set(leaving.map(({ anchor }) => anchor))];
  return anchors.map((anchor) => {
    const own = leaving.filter((wire) => wire.anchor === anchor);
    const whole = how[anchor] === "along" ? `the ${own[0]!.at.split(",")[0]}` : undefined;
    const lines = own.map(
      ({ at, from }) => `The wire from the ${from}.${whole ? "" : ` ${words[how[anchor]](`the ${at}`)}`}`,
    );
    return {
      title: `${verb}: ${listed([...new Set(own.map(({ at }) => at))])}`,
      text: [...lines, ...(whole ? [words.along(whole)] : [])].join(" "),
    };
  });
}

/** Common practice, no source. */
export function stepsOut(leaving: readonly Leaving[], how: HowLetGo): SwapStep[] {
  return [
    {
      title: "Note how it was",
      text: "Measure and write down the gap under both outer strings of every pickup, strings pressed at the last fret, and listen to every position once more.",
    },
    {
      title: "Slacken the strings",
      text: "Until the guard's edge comes free; a capo at the last fret keeps them together. Where they have to come off, take them off.",
    },
    {
      title: "Take off what holds the guard",
      text: "Knobs and the switch tip only where they stand in the way; then the guard's screws, into a dish. Lift the edge slowly: wires are still on.",
    },
    ...connectionSteps(leaving, how, LET_GO, "Comes off"),
    {
      title: "Put it away",
      text: "With its own screws, knobs and a note of its name; pickups apart from iron filings and from other magnets.",
    },
  ];
}

/** Common practice, no source. */
export function stepsIn(leaving: readonly Leaving[], how: HowLetGo): SwapStep[] {
  return [
    {
      title: "Measure it on the bench first",
      text: "The readings below, at its own plug or at the wire ends meant for tip and sleeve, before it goes into the guitar.",
    },
    ...connectionSteps(leaving, how, TAKE_UP, "Goes on"),
    {
      title: "Measure at the jack before it is closed",
      text: "Nothing plugged into an amplifier: an instrument lead in the jack, the meter at its other end, position by position as below. Then strings to ground: under a few ohms from a string to the sleeve.",
    },
    {
      title: "Lay it down and close it",
      text: "No wire under an edge; it lies flat of its own weight. Turn each screw backwards until it drops into its old thread, and do all up crosswise, no further than flush.",
    },
    {
      title: "Tune, then heights, then intonation",
      text: "Tune; set the pickups' heights; tune again. Then compare every string's octave at the twelfth fret with its open note: a pickup nearer the strings pulls them, and intonation that was right before may be off.",
    },
    {
      title: "Plug in, low first",
      text: "Every position, every knob over its whole turn, every push-pull in both places.",
    },
  ];
}

/** What is not touched. */
export function staysWords(leavingOut: readonly Leaving[], leavingIn: readonly Leaving[], how: HowLetGo): string[] {
  const atOut = new Set(leavingOut.map(({ atLug }) => atLug));
  const shared = leavingIn.filter(({ atLug }) => atOut.has(atLug));
  const jackStays = how.jack !== "along";
  return [
    jackStays ? "The jack, with its nut and plate." : "The hole and the screws that the jack sat in.",
    "The spring claw, its screws and springs; the bridge and its setting.",
    "The instrument lead and the amplifier: the same load on either guard.",
    ...(shared.length === leavingIn.length && leavingIn.length > 0
      ? ["Every wire of the new guard goes where one of the old guard came off."]
      : []),
  ];
}
