import { STATUS_CODES } from "node:http";
import type { Socket } from "node:net";
import { PROBLEM_MEDIA_TYPE, plainProblem } from "./problems.ts";

const STATUS_OF_PARSER: Readonly<Record<string, number>> = {
  ERR_HTTP_REQUEST_TIMEOUT: 408,
  HPE_HEADER_OVERFLOW: 431,
};

/** Answers what never became a request: broken HTTP, headers that are too long or too slow. */
export function answerClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code !== "ECONNRESET" && socket.writable) {
    const status = STATUS_OF_PARSER[error.code ?? ""] ?? 400;
    const body = JSON.stringify(plainProblem(status));
    socket.write(
      `HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\nConnection: close\r\nCache-Control: no-store\r\n` +
        `Content-Length: ${body.length}\r\nContent-Type: ${PROBLEM_MEDIA_TYPE}\r\n\r\n${body}`,
    );
  }
  socket.destroy();
}
