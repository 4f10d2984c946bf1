import { type ErrorCode, PresolderError } from "../errors.ts";

/** Every fault of a sound file is reported under the field that carried it. */
export function signalFault(code: ErrorCode, message: string): PresolderError {
  return new PresolderError(code, message, [{ path: "signal", message }]);
}

export function wavFault(message: string): PresolderError {
  return signalFault("WAV_INVALID", message);
}
