const USUAL_PORT = 4173;

/**
 * The port asked for in the environment. Without one, the usual port or the next free one.
 * @param {string | undefined} asked
 * @returns {{ port: number, strict: boolean } | { problem: string }}
 */
export function chosenPort(asked) {
  if (asked === undefined || asked === '') return { port: USUAL_PORT, strict: false };
  const port = Number(asked);
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    return { problem: `PORT is "${asked}". Give a whole number from 0 to 65535 (0 takes any free port).` };
  }
  return { port, strict: port !== 0 };
}
