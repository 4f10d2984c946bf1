import { capitalised, listed } from "../../english.ts";
import type { NoiseTold, ToldPosition, ToldRemedy } from "./noise-told.ts";
import type { RemedyName } from "./remedies.ts";

/** A change that nobody would solder for; a choice. */
const WORTH_DB = -3;

const WAYS: Readonly<Record<RemedyName, string>> = {
  "shielded-cavity": "a shielded cavity",
  "reverse-wound": "a reverse-wound pickup in its place",
  "twisted-pair": "twisted pairs",
  "screened-wire": "screened wire",
};

const SHARES = { coils: "by its coils", loops: "by loops of wire", runs: "by open wires" } as const;

/** "38 dB under a strummed chord, mostly by its coils; the hiss is 75 dB under it". */
function levelWords(position: ToldPosition): string {
  const [hum, hiss] = [position.hum.sum, position.hiss.sum];
  const by = mainShare(position);
  if (hum.decibels === null || hiss.decibels === null)
    return `${hum.microvolts.toPrecision(2)} µV with no string heard, mostly ${by}`;
  return `${Math.round(-hum.decibels)} dB under a strummed chord, mostly ${by}; the hiss is ${Math.round(-hiss.decibels)} dB under it`;
}

/** "positions 1, 2 and 4", or the settings in words. */
function whereWords(positions: readonly ToldPosition[]): string {
  const numbers = positions.flatMap(({ position }) => position ?? []);
  if (numbers.length < positions.length) return listed(positions.map(({ label }) => label));
  return `position${numbers.length > 1 ? "s" : ""} ${listed(numbers)}`;
}

/** Hum that hiss covers nobody would do anything about. */
const standsOut = ({ hum, hiss }: ToldPosition) => hum.sum.microvoltsA > hiss.sum.microvoltsA;

function mostOf(positions: readonly ToldPosition[]): ToldPosition | undefined {
  return positions.reduce<ToldPosition | undefined>(
    (most, each) => (most && most.hum.sum.microvolts >= each.hum.sum.microvolts ? most : each),
    undefined,
  );
}

function mainShare({ hum }: ToldPosition): string {
  const [first] = (["coils", "loops", "runs"] as const).toSorted((a, b) => hum[b].microvolts - hum[a].microvolts);
  return SHARES[first!];
}

/** Of each remedy, where it helps against hum that stands out, and by how much at most. */
function remedyWords({ positions, reverseWound }: NoiseTold): string[] {
  const heard = positions.filter(standsOut);
  const names = [...new Set(heard.flatMap(({ remedies }) => remedies.map(({ name }) => name)))];
  return names.flatMap((name) => {
    const changeIn = ({ remedies }: ToldPosition) => {
      const found = remedies.find((remedy) => remedy.name === name);
      return found ? strongest(found) : 0;
    };
    const helped = heard.filter((each) => changeIn(each) <= WORTH_DB);
    if (helped.length === 0) return [];
    const most = Math.round(-Math.min(...helped.map(changeIn)));
    const way = name === "reverse-wound" ? `a reverse-wound ${reverseWound}` : WAYS[name];
    return [`${way} takes up to ${most} dB of the hum in ${whereWords(helped)}`];
  });
}

function strongest({ change, changeA }: ToldRemedy): number {
  return Math.min(change ?? 0, changeA ?? 0);
}

/** What hums and hisses most, and what would help. */
export function noiseAnswer(told: NoiseTold): string {
  const { positions } = told;
  const most = mostOf(positions);
  if (!most) return "Nothing to tell of.";
  const covered = positions.filter((each) => !standsOut(each));
  const where = positions.length > 1 ? `Most hum is in ${whereWords([most])}: ` : "The hum is ";
  const first = `${where}${levelWords(most)}.`;
  if (covered.length === positions.length) return `${first} The hiss covers the hum.`;
  const words = remedyWords(told);
  const second =
    words.length > 0 ? words.join("; ") : "no foil, twisting or screened wire takes 3 dB of what is heard of it";
  const third = covered.length > 0 ? ` In ${whereWords(covered)} the hiss covers the hum.` : "";
  return `${first} ${capitalised(second)}.${third}`;
}
