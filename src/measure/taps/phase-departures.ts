import type { Build } from "../../build-file/schema.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { pickupCalled, rowCalled, settingWords } from "./tap-words.ts";

interface Side {
  readonly pickup: string;
  readonly coil: string;
  /** Every setting in which it swings against the drawing, and how many it swings in as drawn. */
  readonly against: readonly TapCell[];
  readonly along: number;
}

const isReversed = ({ against, along }: Side) => against.length > 0 && along === 0;

function reversedMessage(build: Build, turned: readonly Side[], sides: readonly Side[]): string {
  const [{ pickup, coil }] = turned as [Side];
  const ofPickup = sides.filter((side) => side.pickup === pickup);
  const others = [
    ...new Set(sides.filter((side) => side.pickup !== pickup).map((side) => pickupCalled(build, side.pickup))),
  ];
  if (turned.length < ofPickup.length) {
    const rest = ofPickup.find((side) => !turned.includes(side))!;
    return `The ${pickupCalled(build, pickup)}'s ${coil} coil is out of phase with its ${rest.coil} coil.`;
  }
  const against = others.length > 1 ? "the other pickups" : `the ${others[0] ?? "drawing"}`;
  return `The ${pickupCalled(build, pickup)} is out of phase with ${against}: its leads, or its magnet, are the other way about.`;
}

/** Rows that swing against the drawing, everywhere or in one setting. */
export function phaseDepartures(build: Build, cells: readonly TapCell[]): TapDeparture[] {
  const sides = grouped(cells, rowKey).map((row): Side => {
    const { pickup, coil } = row[0]!.heard.step;
    const against = row.filter(({ agrees }) => agrees === false);
    return { pickup, coil, against, along: row.filter(({ agrees }) => agrees === true).length };
  });
  const told = sides.filter(({ against, along }) => against.length + along > 0);
  const reversed = grouped(told.filter(isReversed), ({ pickup }) => pickup).map(
    (turned): TapDeparture => ({
      kind: "reversed",
      pickup: turned[0]!.pickup,
      ...(turned.length < told.filter(({ pickup }) => pickup === turned[0]!.pickup).length
        ? { coil: turned[0]!.coil }
        : {}),
      message: reversedMessage(build, turned, told),
    }),
  );
  const here = told
    .filter((side) => !isReversed(side))
    .flatMap(({ pickup, coil, against }) =>
      against.map(({ heard: { step } }): TapDeparture => {
        const message = `In ${settingWords(build, step.settings)} the ${rowCalled(build, { pickup, coil })} is out of phase with what it is elsewhere.`;
        return { kind: "phase", settings: step.settings, pickup, coil, message };
      }),
    );
  return [...reversed, ...here];
}
