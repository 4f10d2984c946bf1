/** Instructions of WebAssembly as bytes (W3C, WebAssembly Core Specification 2.0, chapter 5). */
export type Code = readonly number[];

type ValueType = "i32" | "f32" | "v128";
const VALUE_TYPES: Readonly<Record<ValueType, number>> = { i32: 0x7f, f32: 0x7d, v128: 0x7b };

export interface WasmFunction {
  readonly name: string;
  readonly parameters: readonly ValueType[];
  /** Locals are numbered on from the parameters. */
  readonly locals: readonly ValueType[];
  readonly body: Code;
}

function unsigned(value: number): number[] {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

function signed(value: number): number[] {
  const low = value & 0x7f;
  const rest = value >> 7;
  const last = (rest === 0 && low < 0x40) || (rest === -1 && low >= 0x40);
  return last ? [low] : [low | 0x80, ...signed(rest)];
}

function vector(items: readonly Code[]): number[] {
  return [...unsigned(items.length), ...items.flat()];
}

function sized(bytes: Code): number[] {
  return [...unsigned(bytes.length), ...bytes];
}

export const get = (local: number): Code => [0x20, ...unsigned(local)];
export const set = (local: number, value: Code): Code => [...value, 0x21, ...unsigned(local)];
export const integer = (value: number): Code => [0x41, ...signed(value)];
export const simd = (opcode: number, ...operands: readonly Code[]): Code => [
  ...operands.flat(),
  0xfd,
  ...unsigned(opcode),
];

/** An access of `2 ** alignment` bytes at an address and a constant offset; `lane` for those of one lane. */
function access(opcode: Code, alignment: number, offset: number, ...lane: number[]): Code {
  return [...opcode, alignment, ...unsigned(offset), ...lane];
}

export const load = (address: Code, offset = 0): Code => [...address, ...access([0xfd, 0x00], 4, offset)];
export const store = (address: Code, value: Code, offset = 0): Code => [
  ...address,
  ...value,
  ...access([0xfd, 0x0b], 4, offset),
];
export const storeFloat = (address: Code, value: Code): Code => [...address, ...value, ...access([0x38], 2, 0)];
/** One float into lane 0, zeros beside it. */
export const loadFloat = (address: Code, offset: number): Code => [...address, ...access([0xfd, 0x5c], 2, offset)];
/** One float into a lane of a vector. */
export const loadFloatInto = (lane: number, address: Code, offset: number, into: Code): Code => [
  ...address,
  ...into,
  ...access([0xfd, 0x56], 2, offset, lane),
];

/** The four lanes that `lanes` picks of two vectors' eight. */
export const pick = (a: Code, b: Code, lanes: readonly [number, number, number, number]): Code => [
  ...simd(0x0d, a, b),
  ...lanes.flatMap((lane) => [0, 1, 2, 3].map((byte) => 4 * lane + byte)),
];

/** Does `body`, adds `step` to a local and begins again while it is under `end`. */
export const loop = (local: number, step: number, end: Code, body: readonly Code[]): Code => [
  ...[0x03, 0x40],
  ...body.flat(),
  ...set(local, [...get(local), ...integer(step), 0x6a]),
  ...[...get(local), ...end, 0x49, 0x0d, 0x00, 0x0b],
];

/** A module of functions without results, and a memory that it shares out as `memory`. */
export function assemble(functions: readonly WasmFunction[], pages: number): Uint8Array<ArrayBuffer> {
  const types = functions.map(({ parameters }) => [
    0x60,
    ...vector(parameters.map((type) => [VALUE_TYPES[type]])),
    0x00,
  ]);
  const text = (value: string) => sized([...value].map((character) => character.charCodeAt(0)));
  const exports = functions.map(({ name }, index) => [...text(name), 0x00, ...unsigned(index)]);
  const bodies = functions.map(({ locals, body }) =>
    sized([...vector(locals.map((type) => [1, VALUE_TYPES[type]])), ...body, 0x0b]),
  );
  const section = (id: number, content: Code) => [id, ...sized(content)];
  return Uint8Array.of(
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, vector(types)),
    ...section(3, vector(functions.map((_, index) => unsigned(index)))),
    ...section(5, vector([[0x00, ...unsigned(pages)]])),
    ...section(7, vector([...exports, [...text("memory"), 0x02, 0x00]])),
    ...section(10, vector(bodies)),
  );
}
