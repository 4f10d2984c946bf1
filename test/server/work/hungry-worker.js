/** A worker whose every job but "ready" takes all the memory it can get. */
export default function work({ name }) {
  if (name === "ready") return { value: true };
  const hoard = [];
  for (;;) hoard.push(Array.from({ length: 1_000 }, (_, index) => index + 0.5));
}
