import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { type InputFault, PresolderError } from "../../errors.ts";
import { ResponseEngine } from "../../response/engine.ts";

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

/** A build that could be read, ready to be asked for curves. */
export interface Reading {
  readonly source: BuildSource;
  readonly build: Build;
  readonly controls: Controls;
  readonly engine: ResponseEngine;
}

export type ReadResult = { readonly reading: Reading } | { readonly faults: readonly InputFault[] };

/** Reads a build file in the page itself, so that a fault shows while the field is still in view. */
export function readSource(source: BuildSource): ReadResult {
  try {
    const build = readBuild(source);
    return { reading: { source, build, controls: new Controls(build), engine: new ResponseEngine(build) } };
  } catch (error) {
    if (!(error instanceof PresolderError)) throw error;
    const faults = error.faults.length > 0 ? error.faults : [{ path: "build", message: error.message }];
    return { faults };
  }
}
