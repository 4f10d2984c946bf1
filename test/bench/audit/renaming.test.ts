import { describe, expect, test } from "vitest";
import { auditBuild, type Finding } from "../../../src/bench/audit/audit.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Wiring } from "../../../src/wiring/nets.ts";
import {
  buildOf,
  type Changes,
  type Guard,
  leadsSwapped,
  splitHumbucker,
  threeSingles,
  twoHumbuckers,
} from "./guards.ts";

type Rename = (lug: string) => string;

const renameWires = (build: Build, rename: Rename): Build => ({
  ...build,
  wires: build.wires.map((wire) => ({ ...wire, from: rename(wire.from), to: rename(wire.to) })),
});

/** What must not change: codes, severities, settings and the set of lugs, under their new names. */
function essence(findings: readonly Finding[], rename: Rename = (lug) => lug) {
  return findings
    .map(({ code, severity, settings, lugs }) => ({ code, severity, settings, lugs: lugs.map(rename).sort() }))
    .sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)));
}

/** Guards right and wrong, so that findings are there to be changed. */
const BUILDS: readonly [string, Guard, Changes][] = [
  ["three single coils", threeSingles, {}],
  ["two humbuckers", twoHumbuckers, {}],
  ["a split humbucker", splitHumbucker, {}],
  ["a dead cap", threeSingles, { remove: [["tone2.case", "volume.case"]] }],
  ["tones off the signal", threeSingles, { remove: [["lever.A0", "lever.B0"]] }],
  ["a shorted lug", threeSingles, { add: [["lever.A2", "tone1.case"]] }],
  ["a lost ground", threeSingles, { remove: [["middle.ground", "volume.case"]] }],
  ["swapped leads", threeSingles, leadsSwapped("bridge", "lever.A1")],
  [
    "a turned coil",
    twoHumbuckers,
    {
      remove: [
        ["neck.slug.start", "neck.screw.finish"],
        ["neck.screw.start", "tone.case"],
      ],
      add: [
        ["neck.slug.start", "neck.screw.start"],
        ["neck.screw.finish", "tone.case"],
      ],
    },
  ],
  ["a touching tone lug", splitHumbucker, { add: [["tone.3", "tone.case"]] }],
];

const swapWords =
  (pairs: readonly (readonly [RegExp, string])[]): Rename =>
  (lug) => {
    for (const [pattern, replacement] of pairs) if (pattern.test(lug)) return lug.replace(pattern, replacement);
    return lug;
  };

const swapPoles = swapWords([
  [/^lever\.A/, "lever.B"],
  [/^lever\.B/, "lever.A"],
  [/^tone\.s\.A/, "tone.s.B"],
  [/^tone\.s\.B/, "tone.s.A"],
]);

const swapCapEnds = swapWords([
  [/^cap\.a$/, "cap.b"],
  [/^cap\.b$/, "cap.a"],
]);

const swapLeads = swapWords([
  [/\.hot$/, ".ground"],
  [/\.ground$/, ".hot"],
  [/\.start$/, ".finish"],
  [/\.finish$/, ".start"],
]);

/** Every coil's ends under each other's names, and so its winding the other way. */
function withLeadsRenamed(build: Build): Build {
  const parts = Object.entries(build.parts).map(([name, part]) => {
    if (part.kind !== "pickup") return [name, part] as const;
    const coils = Object.entries(part.coils).map(([coil, spec]) => {
      const winding = spec.winding === "forward" ? ("reverse" as const) : ("forward" as const);
      return [coil, { ...spec, winding }] as const;
    });
    return [name, { ...part, coils: Object.fromEntries(coils) }] as const;
  });
  return renameWires({ ...build, parts: Object.fromEntries(parts) }, swapLeads);
}

/** The same nets, each wired as a star from its last lug instead. */
function rewiredAsStars(build: Build): Build {
  const wiring = new Wiring(build);
  const { netOfLug, count } = wiring.wiredNets();
  const nets = Array.from({ length: count }, (_, net) => wiring.lugs.lugs.filter((_lug, i) => netOfLug[i] === net));
  const wires = nets.flatMap((lugs) => lugs.slice(0, -1).map((lug) => ({ from: lugs.at(-1)!.name, to: lug.name })));
  return { ...build, wires };
}

const PART_NAMES: Readonly<Record<string, string>> = {
  neck: "zeta",
  middle: "a1",
  bridge: "q_9",
  lever: "selector",
  volume: "loud",
  tone1: "x1",
  cap: "tone1",
  claw: "springs",
};

const renameParts: Rename = (lug) => {
  const [part = "", ...rest] = lug.split(".");
  return [PART_NAMES[part] ?? part, ...rest].join(".");
};

function withPartsRenamed(build: Build): Build {
  const parts = Object.fromEntries(Object.entries(build.parts).map(([name, part]) => [renameParts(name), part]));
  return renameWires({ ...build, parts }, renameParts);
}

/** The toggle between the humbuckers has one pole. */
const TWO_POLED = BUILDS.filter(([, guard]) => guard !== twoHumbuckers);

test.each(TWO_POLED)("the audit of %s is the same with the switch's two poles exchanged", (_, guard, changes) => {
  const build = buildOf(guard, changes);
  const exchanged = renameWires(build, swapPoles);
  expect(exchanged).not.toEqual(build);
  expect(essence(auditBuild(exchanged))).toEqual(essence(auditBuild(build), swapPoles));
});

describe.each(BUILDS)("the audit of %s", (_, guard, changes) => {
  const build = buildOf(guard, changes);
  const findings = auditBuild(build);

  test("is the same with the cap turned round", () => {
    expect(essence(auditBuild(renameWires(build, swapCapEnds)))).toEqual(essence(findings, swapCapEnds));
  });

  test("is the same with every coil's start called its finish and its winding named the other way", () => {
    expect(essence(auditBuild(withLeadsRenamed(build)))).toEqual(essence(findings, swapLeads));
  });

  test("is the same with the wires listed backwards and turned round", () => {
    const turned = { ...build, wires: build.wires.map(({ from, to }) => ({ from: to, to: from })).reverse() };
    expect(essence(auditBuild(turned))).toEqual(essence(findings));
  });

  test("names the same faults with every net wired as a star", () => {
    const faults = (list: readonly Finding[]) =>
      essence(list).map(({ code, severity, settings }) => ({ code, severity, settings }));
    expect(faults(auditBuild(rewiredAsStars(build)))).toEqual(faults(findings));
  });

  test("follows the parts' names and nothing else of them", () => {
    const renamed = auditBuild(withPartsRenamed(build));
    const inNewNames = findings.map((finding) => ({
      ...finding,
      settings: finding.settings.map((setting) =>
        Object.fromEntries(Object.entries(setting).map(([name, value]) => [renameParts(name), value])),
      ),
    }));
    expect(essence(renamed)).toEqual(essence(inNewNames, renameParts));
  });
});
