import type { Sound } from "../audio/sound.ts";
import { readCabinet } from "../listening/cabinet/read-cabinet.ts";
import { type Chain, createChain } from "../listening/chain.ts";

/** A listening chain as a request asks for it; without one a sound is as it comes out of the jack. */
export interface AskedListening {
  /** 0 to MAX_DRIVE. */
  readonly drive: number;
  /** The bytes of a WAV file: one's own instead of the stated speaker. */
  readonly cabinet?: Uint8Array | undefined;
}

/** @throws PresolderError under the path `cabinet` for a file that cannot be used */
export function chainOf({ drive, cabinet }: AskedListening, sampleRateHz: number): Chain {
  return createChain({ drive, cabinet: cabinet && readCabinet(cabinet) }, sampleRateHz);
}

/** A renderer's sound through the chain, where there is one. */
export function through(chain: Chain | undefined, jack: Sound, checkpoint: () => void): Sound {
  return chain ? chain.through(jack, checkpoint) : jack;
}
