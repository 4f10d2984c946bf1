import type { Build } from "../../build-file/schema.ts";
import { exchangedPickups } from "./exchanged-pickups.ts";
import { type Exchange, exchangedPositions } from "./exchanged-positions.ts";
import { type ForetoldTap, foretoldTaps } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import { tapLogLikelihood } from "./tap-likelihood.ts";
import { type TapInput, TapTransfers } from "./tap-transfers.ts";

/** ln of the odds that something has changed places, before anything is heard: a judgement, no source. */
const RARE = -5;
/** Two exchanges that account for what was heard within this, in nats, are not told apart by it. */
const ALIKE = 1;

interface Weighed extends Exchange {
  readonly worth: number;
}

const bestOf = (all: readonly Weighed[]) =>
  all.reduce<Weighed | undefined>((best, each) => (best && best.worth >= each.worth ? best : each), undefined);

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** The likelier of two, the other with it where nothing tells them apart: three single coils hardly show which it is. */
function told(positions: Weighed | undefined, pickups: Weighed | undefined): Weighed | undefined {
  if (!positions || !pickups) return positions ?? pickups;
  if (Math.abs(positions.worth - pickups.worth) > ALIKE) return positions.worth > pickups.worth ? positions : pickups;
  const message = `${positions.message} Or ${lowered(pickups.message)} The taps sound the same.`;
  return { ...positions, message };
}

/** What a drawing's steps foretell; and with an exchange that accounts for what was heard better, where there is one. */
export function placedTaps(
  build: Build,
  heard: readonly HeardTap[],
  input: TapInput | undefined,
): { readonly drawn: readonly ForetoldTap[]; readonly exchange: Exchange | undefined } {
  const steps = heard.map(({ step }) => step);
  const transfers = new TapTransfers(build, input);
  const drawn = foretoldTaps(build, steps, input, transfers);
  const weighed = ({ foretold, message }: Exchange): Weighed => {
    return { foretold, message, worth: tapLogLikelihood(heard, foretold) + RARE };
  };
  const exchange = told(
    bestOf(exchangedPositions(build, steps, transfers).map(weighed)),
    bestOf(exchangedPickups(build, steps, input).map(weighed)),
  );
  return { drawn, exchange: exchange && exchange.worth > tapLogLikelihood(heard, drawn) ? exchange : undefined };
}
