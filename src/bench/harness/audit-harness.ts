import type { Build } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";
import { type Finding, finding } from "../audit/finding.ts";
import type { FindingCode } from "../audit/finding-codes.ts";
import { withStandIns } from "./stand-ins.ts";
import { waitingSwitches } from "./waiting-switches.ts";

/** What is said of pickups, which a harness has none of. */
const OF_PICKUPS: ReadonlySet<FindingCode> = new Set([
  "pickup-silent",
  "coil-silent",
  "pair-out-of-phase",
  "coils-out-of-phase",
  "hum-not-cancelling",
  "shield-hot",
  "load-unusual",
  "metal-dims",
]);

function nothingToHear(places: readonly string[]): Finding {
  const message = "There is no pickup yet, so there is nothing to hear; the harness is judged by itself";
  if (places.length === 0)
    return finding({
      code: "no-pickup",
      lugs: [],
      message: `${message}, and no lug of the selector or of a volume is free for a pickup.`,
      remedy: "Wire the selector's common, or the volume, to the jack first; then add pickups.",
    });
  return finding({
    code: "no-pickup",
    lugs: places,
    message: `${message}, as if a single coil were wired to ${listed(places)}.`,
    remedy:
      "Add the pickups when they are there: hot to these lugs, ground to the cases. No wire of the harness moves.",
  });
}

/**
 * Reads a harness without pickups: the findings of the same wiring with a single coil in every free place, told of the harness's
 * own lugs.
 * @param audit reads a build that has pickups
 */
export function auditHarness(build: Build, audit: (build: Build) => Finding[]): Finding[] {
  const stoodIn = withStandIns(build);
  const note = nothingToHear(stoodIn.places);
  if (stoodIn.places.length === 0) return [note];
  const waiting = waitingSwitches(build);
  const isOpen = ({ code, lugs }: Finding) =>
    (code === "control-no-effect" && lugs.every((lug) => waiting.has(lug.slice(0, lug.lastIndexOf("."))))) ||
    // A pickup may belong on a switch that waits, and sound by way of it.
    (code === "dead-position" && waiting.size > 0);
  const findings = audit(stoodIn.build).filter((each) => !OF_PICKUPS.has(each.code) && !isOpen(each));
  const own = findings.map((each) => ({
    ...each,
    lugs: [...new Set(each.lugs.map((lug) => stoodIn.lugOf.get(lug) ?? lug))],
  }));
  return [note, ...own];
}

/** Of a whole guard's findings those that its harness alone is answerable for. */
export function ofHarness(build: Build, findings: readonly Finding[]): Finding[] {
  const isPickup = (lug: string) => build.parts[lug.split(".", 1)[0]!]?.kind === "pickup";
  return findings.filter(({ code, lugs }) => !OF_PICKUPS.has(code) && !lugs.some(isPickup));
}
