import { faultAt, type PresolderError } from "../../errors.ts";
import { suggestion } from "../nearest.ts";

/** A plan that is well formed but cannot be wired; `path` is inside the plan. */
export function planFault(path: string, message: string): PresolderError {
  return faultAt("BUILD_INVALID", `build.plan.${path}`, message);
}

/** The name, if it is one of the known; else a fault that suggests the nearest. */
export function knownName(path: string, name: string, known: readonly string[], what: string): string {
  if (known.includes(name)) return name;
  throw planFault(path, `there is no ${what} "${name.slice(0, 60)}"${suggestion(name, known)}`);
}
