import { METAL, type Question, type Test } from "./question.ts";

/** Every reading between two leads, or from a lead to the metal. */
export function ohmsTests(leadCount: number, hasMetal: boolean): Extract<Test, { kind: "ohms" }>[] {
  const leads = Array.from({ length: leadCount }, (_, index) => index);
  return [
    ...leads.flatMap((a) => leads.slice(a + 1).map((b) => ({ kind: "ohms" as const, a, b }))),
    ...(hasMetal ? leads.map((a) => ({ kind: "ohms" as const, a, b: METAL })) : []),
  ];
}

/** Every tap, + on one lead and − on another; the other way round it shows the opposite. */
export function kickTests(leadCount: number, rowCount: number): Extract<Test, { kind: "kick" }>[] {
  return Array.from({ length: rowCount }, (_, row) =>
    ohmsTests(leadCount, false).map(({ a, b }) => ({ kind: "kick" as const, row, plus: a, minus: b })),
  ).flat();
}

/** All that can be asked of a pickup with meter, taps and compass. */
export function allTests({ leads, rows, hasMetal }: Pick<Question, "leads" | "rows" | "hasMetal">): Test[] {
  return [
    ...ohmsTests(leads.length, hasMetal),
    ...rows.map((_, row) => ({ kind: "compass" as const, row })),
    ...kickTests(leads.length, rows.length),
  ];
}

/** The same for a test and its mirror image. */
export function testKey(test: Test): string {
  if (test.kind === "compass") return `compass ${test.row}`;
  const ends = test.kind === "ohms" ? [test.a, test.b] : [test.plus, test.minus];
  const pair = ends.sort((x, y) => x - y).join(" ");
  return test.kind === "ohms" ? `ohms ${pair}` : `kick ${test.row} ${pair}`;
}
