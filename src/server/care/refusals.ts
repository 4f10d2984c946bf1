/** A queue of this service turns over in about this time. */
export const RETRY_AFTER_SECONDS = 2;

/** A client asks for more than its share (RFC 6585, 4). */
export class TooManyRequests extends Error {
  readonly statusCode = 429;

  constructor(message: string) {
    super(message);
    this.name = "TooManyRequests";
  }
}
