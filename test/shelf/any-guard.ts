import fc from "fast-check";
import { GUARD_STATES, type Guard, type GuardContent, REPLACED_BY } from "../../src/shelf/guard.ts";

/** Any text, lone surrogates, quotes, line ends and signs of other scripts included. */
const text = (maxLength: number) => fc.string({ unit: "binary", maxLength });

const day = fc
  .date({ min: new Date("1900-01-01T00:00:00Z"), max: new Date("2100-01-01T00:00:00Z"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

const instant = fc
  .date({ min: new Date("2000-01-01T00:00:00Z"), max: new Date("2100-01-01T00:00:00Z"), noInvalidDate: true })
  .map((date) => date.toISOString());

const readings = fc.array(
  fc.record({
    id: fc.uuid(),
    date: day,
    note: text(30),
    values: fc.array(fc.record({ what: text(20), read: text(20) }), { maxLength: 3 }),
  }),
  { maxLength: 3 },
);

/** Text that is no JSON, JSON as this page writes it, and JSON as somebody else does. */
const file = fc.oneof(
  text(80),
  fc.json().map((json) => `${JSON.stringify(JSON.parse(json), null, 2)}\n`),
  fc.json(),
);

const content = {
  name: text(40),
  guitar: text(40),
  state: fc.constantFrom(...GUARD_STATES),
  made: day,
  notes: text(60),
  file,
  readings,
};

const version = fc.record({
  at: instant,
  by: fc.constantFrom(...REPLACED_BY),
  was: fc.record(content, { requiredKeys: [] }),
});

export const anyContent: fc.Arbitrary<GuardContent> = fc.record(content);

export const anyGuard: fc.Arbitrary<Guard> = fc.record({
  id: fc.uuid(),
  ...content,
  changed: instant,
  history: fc.array(version, { maxLength: 4 }),
});

export const anyShelf: fc.Arbitrary<Guard[]> = fc.uniqueArray(anyGuard, { selector: ({ id }) => id, maxLength: 5 });
