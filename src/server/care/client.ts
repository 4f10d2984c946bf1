import { isIPv4, isIPv6 } from "node:net";

const GROUPS = 8;
/** A provider gives an IPv6 customer a whole /64 (RFC 6177), so its first four groups stand for one client. */
const NETWORK_GROUPS = 4;

function groupsOf(address: string): string[] {
  const [head = "", tail] = address.split("::");
  const split = (part: string) => (part === "" ? [] : part.split(":"));
  if (tail === undefined) return split(head);
  const zeros = new Array(Math.max(0, GROUPS - split(head).length - split(tail).length)).fill("0");
  return [...split(head), ...zeros, ...split(tail)];
}

/** Whom an address stands for, in limits and in the queue. */
export function clientOf(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined && isIPv4(mapped)) return mapped;
  if (!isIPv6(address)) return address;
  const groups = groupsOf(address.split("%")[0]!.toLowerCase());
  return `${groups
    .slice(0, NETWORK_GROUPS)
    .map((group) => group.replace(/^0+(?=.)/, ""))
    .join(":")}::/64`;
}
