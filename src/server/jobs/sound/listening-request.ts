import type { SoundBody } from "../../../contract/sound-fields.ts";
import { faultAt } from "../../../errors.ts";
import { CABINET_FIELD } from "../../../listening/cabinet/read-cabinet.ts";
import type { AskedListening } from "../../../render/heard-through.ts";

/**
 * What a sound is to be heard through; undefined for the jack itself.
 * @param cabinet the file that came with the request
 * @throws PresolderError REQUEST_INVALID where a cabinet is missing, or was sent and would not be heard
 */
export function listeningOf(listening: SoundBody["listening"], cabinet: Uint8Array | undefined) {
  const { chain, drive, cabinet: wanted } = listening ?? { chain: "none", drive: 0 };
  if (cabinet && chain === "none") {
    throw faultAt(
      "REQUEST_INVALID",
      CABINET_FIELD,
      'would not be heard; expected "listening": {"chain": "clean"} with it',
    );
  }
  if (cabinet && wanted === "stated") {
    throw faultAt("REQUEST_INVALID", "listening.cabinet", `is "stated" beside a file of one's own; expected "own"`);
  }
  if (chain === "none") return undefined;
  if (!cabinet && wanted === "own") {
    throw faultAt(
      "REQUEST_INVALID",
      CABINET_FIELD,
      "is missing; expected a WAV file with the cabinet's impulse response",
    );
  }
  const asked: AskedListening = { drive, cabinet };
  return asked;
}
