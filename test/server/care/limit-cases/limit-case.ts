import type { InjectOptions, LightMyRequestResponse } from "fastify";

type Reply = PromiseLike<LightMyRequestResponse>;

/** How a service is asked. */
export interface Asking {
  post(url: string, payload: object): Reply;
  /** Sends a file as the signal of a preview. */
  upload(file: Uint8Array): Reply;
  inject(request: InjectOptions): Reply;
}

/** A request that goes just beyond one limit. */
export interface Case {
  readonly limit: string;
  readonly send: (asking: Asking) => Reply;
  readonly status: number;
  /** The field at fault. */
  readonly path: string;
  /** The limit, which the answer names. */
  readonly names: number;
}
