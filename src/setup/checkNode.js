/** Oldest minor version of each major that the build tools accept; later majors are accepted as they are. */
const OLDEST_MINOR = new Map([
  [20, 19],
  [21, Number.POSITIVE_INFINITY],
]);

/**
 * Whether this Node can run the project: 20.19 or later, or 22 and later.
 * @param {string} version like '20.19.0'
 */
export function isNodeGoodEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major >= 20 && minor >= (OLDEST_MINOR.get(major) ?? 0);
}

/** Ends the process with a plain sentence when Node is too old, before anything is installed. */
export function checkNode() {
  if (isNodeGoodEnough(process.versions.node)) return;
  console.error(
    `Quietpour needs Node 20.19 or later, or Node 22 or later; this is Node ${process.versions.node}. ` +
      'Install a newer Node from your system or nodejs.org, then start again.',
  );
  process.exit(1);
}
