import type { SettingValue } from "../../build-file/settings.ts";
import { FINDING_CODES, type FindingCode, type Severity } from "./finding-codes.ts";

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** The lugs concerned, by name. */
  readonly lugs: readonly string[];
  /** The settings where it bites; only the switches that decide are named. Empty: in all of them. */
  readonly settings: readonly Readonly<Record<string, SettingValue>>[];
  readonly message: string;
  readonly remedy: string;
}

interface FindingParts extends Omit<Finding, "severity" | "settings"> {
  readonly severity?: Severity;
  readonly settings?: Finding["settings"];
}

/** A finding with its code's own severity and biting everywhere, unless told otherwise. */
export function finding({ code, severity, lugs, settings, message, remedy }: FindingParts): Finding {
  return {
    code,
    severity: severity ?? FINDING_CODES[code].severity,
    lugs: [...new Set(lugs)],
    settings: settings ?? [],
    message,
    remedy,
  };
}
