import { fileURLToPath } from 'node:url';

/** The project's folder, whatever folder the command was started from. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/** @param {string} relative path below the project's folder, with slashes */
export const inProject = (relative) => fileURLToPath(new URL(`../../${relative}`, import.meta.url));
