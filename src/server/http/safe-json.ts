/** Keys that could reach an object's prototype; escapes may hide them from a plain search. */
const SUSPICIOUS = /__proto__|constructor|\\u/;

function refusePrototypeKeys(key: string, value: unknown): unknown {
  const reachesPrototype =
    key === "__proto__" ||
    (key === "constructor" && typeof value === "object" && value !== null && Object.hasOwn(value, "prototype"));
  if (reachesPrototype) throw new SyntaxError(`the key "${key}" is not allowed`);
  return value;
}

/**
 * JSON that did not come as a body of its own, read with the same care as Fastify reads bodies.
 * @throws SyntaxError for what is no JSON, or has a key that reaches a prototype
 */
export function parseJson(text: string): unknown {
  return SUSPICIOUS.test(text) ? JSON.parse(text, refusePrototypeKeys) : JSON.parse(text);
}
