import { suggestion } from "../../build-file/nearest.ts";
import type { PartOf } from "../../build-file/schema.ts";
import { switchTable } from "../../build-file/switch-types.ts";
import type { InputFault } from "../../errors.ts";
import type { BeepTold, SwitchQuestion } from "./question.ts";

function lugFaults({ lugs }: SwitchQuestion): InputFault[] {
  const withSpots = lugs.some(({ spot }) => spot);
  const isSame = (a: number, b: number) => {
    const [one, other] = [lugs[a]!.spot, lugs[b]!.spot];
    return one && other && one.x === other.x && one.y === other.y;
  };
  return lugs.flatMap(({ name, spot }, index): InputFault[] => {
    const first = lugs.findIndex((lug) => lug.name === name);
    if (first < index)
      return [{ path: `lugs.${index}`, message: `the name "${name}" is another lug's; expected each once` }];
    if (withSpots && !spot)
      return [{ path: `lugs.${index}.spot`, message: `is missing for "${name}"; expected it of all lugs or of none` }];
    const there = lugs.findIndex((_, other) => isSame(other, index));
    if (there >= 0 && there < index)
      return [
        { path: `lugs.${index}.spot`, message: `is where "${lugs[there]!.name}" sits; expected a spot of its own` },
      ];
    return [];
  });
}

function beepFaults({ lugs, positions }: SwitchQuestion, told: BeepTold, path: string): InputFault[] {
  const names = lugs.map(({ name }) => name);
  const unknown = told.between.flatMap((name, end) =>
    names.includes(name)
      ? []
      : [{ path: `${path}.between.${end}`, message: `there is no lug "${name}"${suggestion(name, names)}` }],
  );
  const itself =
    told.between[0] === told.between[1]
      ? [{ path: `${path}.between.1`, message: "is the same lug; expected another" }]
      : [];
  const said: [string, number][] = [
    ...(told.positions ?? []).map((position, index): [string, number] => [`positions.${index}`, position]),
    ...(told.betweenPositions ?? []).map((position, index): [string, number] => [
      `betweenPositions.${index}`,
      position,
    ]),
    ...(told.position === undefined ? [] : [["position", told.position] as [string, number]]),
  ];
  const beyond = said.filter(([, position]) => position > positions);
  return [
    ...unknown,
    ...itself,
    ...beyond.map(([field, position]) => ({
      path: `${path}.${field}`,
      message: `is ${position}; expected 1 to ${positions}, the handle's positions`,
    })),
  ];
}

function placeFaults({ source, part, moves, lugs }: SwitchQuestion): InputFault[] {
  if (!source) {
    const idle = part !== undefined ? "part" : Object.keys(moves).length > 0 ? "moves" : undefined;
    return idle ? [{ path: idle, message: "is of no use without `build`; expected both" }] : [];
  }
  const switches = Object.entries(source.parts).flatMap(([name, { kind }]) => (kind === "switch" ? [name] : []));
  if (part === undefined || !switches.includes(part)) {
    const found = part === undefined ? "is missing" : `there is no switch "${part}"`;
    return [
      { path: "part", message: `${found}; expected a switch of the guard: ${switches.join(", ") || "it has none"}` },
    ];
  }
  const oldLugs = switchTable(source.parts[part] as PartOf<"switch">).lugs;
  const names = lugs.map(({ name }) => name);
  return Object.entries(moves).flatMap(([lug, to]): InputFault[] => {
    if (!oldLugs.includes(lug))
      return [{ path: `moves.${lug}`, message: `${part} has no such lug${suggestion(lug, oldLugs)}` }];
    return names.includes(to)
      ? []
      : [{ path: `moves.${lug}`, message: `there is no lug "${to}"${suggestion(to, names)}` }];
  });
}

/** What of a question does not go together, each by its path. */
export function switchFaults(question: SwitchQuestion): InputFault[] {
  return [
    ...lugFaults(question),
    ...question.beeps.flatMap((told, index) => beepFaults(question, told, `beeps.${index}`)),
    ...placeFaults(question),
  ];
}
