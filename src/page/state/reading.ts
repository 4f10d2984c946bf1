import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import type { InputFault } from "../../errors.ts";

/** A build file as it is written: JSON, quantities still text. */
export interface BuildSource {
  readonly presolder: 1;
  readonly title?: string;
  readonly notes?: string;
  readonly parts: Readonly<Record<string, PartSource>>;
  readonly wires: readonly WireSource[];
  readonly cable?: Readonly<Record<string, unknown>>;
  readonly load?: Readonly<Record<string, unknown>>;
  readonly strings?: Readonly<Record<string, unknown>>;
}

export interface PartSource {
  readonly kind: string;
  readonly [key: string]: unknown;
}

export interface WireObject {
  readonly from: string;
  readonly to: string;
  readonly [key: string]: unknown;
}

export type WireSource = readonly [string, string] | WireObject;

/** A build that could be read. */
export interface Reading {
  readonly source: BuildSource;
  readonly build: Build;
  readonly controls: Controls;
}

export type ReadResult = { readonly reading: Reading } | { readonly faults: readonly InputFault[] };

/** A build with its controls. */
export function readingOf(source: BuildSource, build: Build): Reading {
  return { source, build, controls: new Controls(build) };
}
