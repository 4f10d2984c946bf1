import { extremeGuard } from "./extreme-guard.ts";
import { worstOf } from "./held-to-solution.ts";
import { furthestFromFiftyDigits } from "./high-precision.ts";
import { plausibleGuard } from "./plausible-guard.ts";

// Usage: npm run exact -- [plausible|extreme] [first seed] [seed after the last]
const GUARDS = { plausible: plausibleGuard, extreme: extremeGuard };
/** Every so many guards' plain solution is itself held to one of 50 digits. */
const EVERY = 50;

const [kind, from = "0", to = "10000"] = process.argv.slice(2);
const kinds = Object.entries(GUARDS).filter(([name]) => kind === undefined || name === kind);
const seeds = Array.from({ length: Number(to) - Number(from) }, (_, index) => Number(from) + index);

for (const [name, guardOf] of kinds) {
  const most = { decibels: 0, degrees: 0 };
  let [over, differing] = [0, 0];
  for (const seed of seeds) {
    const worst = worstOf(guardOf(seed), seed);
    const isOver = worst.decibels > 0.001 || worst.degrees > 0.01;
    if (isOver) over++;
    if (worst.differing > 0) differing++;
    if (isOver || worst.differing > 0) console.log(name, seed, JSON.stringify(worst));
    most.decibels = Math.max(most.decibels, worst.decibels);
    most.degrees = Math.max(most.degrees, worst.degrees);
  }
  const some = seeds.filter((_, index) => index % EVERY === 0);
  const plainOff = furthestFromFiftyDigits(
    some.map((seed) => guardOf(seed)),
    some[0] ?? 0,
  );
  console.log(
    JSON.stringify({ guards: name, from, to, over, differing, ...most, checkedToFiftyDigits: some.length, plainOff }),
  );
}
