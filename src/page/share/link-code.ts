import { postJson } from "../server/client.ts";
import type { Reading } from "../state/reading.ts";

const codes = new WeakMap<Reading, Promise<string>>();

/** The code under which the service's addresses know a build. */
export function codeOf(reading: Reading): Promise<string> {
  const known = codes.get(reading);
  if (known) return known;
  const code = postJson("/api/link", { build: reading.source }).then((link) => link.code);
  codes.set(reading, code);
  code.catch(() => codes.delete(reading));
  return code;
}
