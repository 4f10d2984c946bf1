import type { z } from "zod";

/** Read-only all the way down. */
type Frozen<T> = unknown extends T ? T : { readonly [Key in keyof T]: Frozen<T[Key]> };

/** A request as a caller writes it. */
export type Sent<Schema extends z.ZodType> = Frozen<z.input<Schema>>;

/** An answer as its caller has it. What the service reads of a request is plain `z.output`. */
export type Answered<Schema extends z.ZodType> = Frozen<z.output<Schema>>;
