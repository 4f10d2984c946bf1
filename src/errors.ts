import { MAX_DETAIL_CHARS, MAX_FAULT_CHARS } from "./limits.ts";

/** What can go wrong, by stable code. The core throws these without an HTTP status; `src/server/http/problems.ts` maps each code to one. */
export const ERROR_TITLES = {
  BUILD_INVALID: "The build file is not valid",
  SETTINGS_INVALID: "The settings do not fit the build",
  REQUEST_INVALID: "The request is not valid",
  WAV_INVALID: "The sound file cannot be read as WAV",
  SOUND_UNUSABLE: "The sound cannot be rendered",
  LIMIT_EXCEEDED: "A limit of this service is exceeded",
  LINK_INVALID: "The link code cannot be opened",
  DATA_INSUFFICIENT: "The data cannot decide the question",
  NETWORK_SINGULAR: "The network has no unique solution",
  NOT_FOUND: "There is nothing under this name",
} as const;

export type ErrorCode = keyof typeof ERROR_TITLES;

/** One fault of the input: where it stands (`parts.tone1.resistance`) and what was found and expected. */
export interface InputFault {
  readonly path: string;
  readonly message: string;
}

export class PresolderError extends Error {
  readonly code: ErrorCode;
  readonly faults: readonly InputFault[];

  constructor(code: ErrorCode, detail: string, faults: readonly InputFault[] = []) {
    super(detail);
    this.name = "PresolderError";
    this.code = code;
    this.faults = faults;
  }
}

/** Faults in one line, each behind its path. */
export function faultLine(faults: readonly InputFault[]): string {
  return faults
    .map(({ path, message }) => `${path}: ${message}`)
    .join("; ")
    .slice(0, MAX_DETAIL_CHARS);
}

const cut = (text: string) => (text.length > MAX_FAULT_CHARS ? `${text.slice(0, MAX_FAULT_CHARS)}…` : text);

/** A refusal that names every fault in its detail. */
export function refused(code: ErrorCode, faults: readonly InputFault[]): PresolderError {
  const told = faults.map(({ path, message, ...more }) => ({ path: cut(path), message: cut(message), ...more }));
  return new PresolderError(code, faultLine(told), told);
}

/** A refusal for the usual case of exactly one fault. */
export function faultAt(code: ErrorCode, path: string, message: string): PresolderError {
  return refused(code, [{ path, message }]);
}
