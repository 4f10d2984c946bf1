import { isIPv6 } from "node:net";
import type { FastifyRequest } from "fastify";
import { clientOf } from "../care/client.ts";

declare module "fastify" {
  interface FastifyInstance {
    /** Where links lead whatever a caller says; undefined for where the caller reached the service. */
    publicUrl: string | undefined;
  }
}

const LOOPBACK_NAME = /^(localhost|127(\.\d+){3}|\[::1\])$/;

const inAddress = (address: string) => (isIPv6(address) ? `[${address}]` : address);

/**
 * The address that a link of this service begins with. A Host header is anybody's to write, and a link that leads elsewhere would be
 * passed on in good faith; so it is taken only where it names this very machine or what the caller is connected to, or where a
 * trusted proxy says it.
 */
export function publicOrigin(request: FastifyRequest): string {
  const { server, protocol, host, hostname, socket } = request;
  if (server.publicUrl !== undefined) return server.publicUrl;
  const { localAddress, localPort } = socket;
  const here = localAddress === undefined ? undefined : inAddress(asIpv4(localAddress));
  const isForwarded = request.ips !== undefined && request.ips.length > 1;
  if (here === undefined || isForwarded || LOOPBACK_NAME.test(hostname) || hostname === here) {
    return `${protocol}://${host}`;
  }
  return `${protocol}://${here}:${localPort}`;
}

/** IPv4 as it is written, though a socket of both kinds maps it into IPv6. */
const asIpv4 = (address: string) => (isIPv6(address) && address.includes(".") ? clientOf(address) : address);
