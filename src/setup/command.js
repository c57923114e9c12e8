import { spawn } from 'node:child_process';
import { basename } from 'node:path';
import { inProject, projectFolder } from './paths.js';

/**
 * A command to run: the program, its arguments, what to add to the environment, and the folder (the project's by default).
 * @typedef {{ program: string, args: string[], env?: Record<string, string>, shell?: boolean, folder?: string }} Command
 */

/**
 * A script out of an installed package, run by this Node (no shell, so it works the same everywhere).
 * @param {string} script path below node_modules
 * @param {string[]} args
 * @returns {Command}
 */
export const packageScript = (script, args) => ({
  program: process.execPath,
  args: [inProject(`node_modules/${script}`), ...args],
});

/**
 * npm itself. Under `npm run` it is called through Node, because on Windows `npm` is not a program but a batch file.
 * @param {string[]} args
 * @returns {Command}
 */
export function npmCommand(args) {
  const npm = process.env['npm_execpath'];
  // A production environment would leave out what the build needs.
  const env = { NODE_ENV: 'development' };
  if (npm && basename(npm).startsWith('npm-cli'))
    return { program: process.execPath, args: [npm, ...args], env };
  return { program: 'npm', args, env, shell: process.platform === 'win32' };
}

/** @param {Command} command */
const settings = (command) => ({
  cwd: command.folder ?? projectFolder,
  env: { ...process.env, ...command.env },
  shell: command.shell ?? false,
});

/**
 * Runs a command in the project's folder and gives its exit code.
 * Its output goes to our error stream, so that a command's own answer on standard output stays clean.
 * @param {Command} command
 * @param {import('node:child_process').StdioOptions} [stdio]
 * @returns {Promise<number>}
 */
export function run(command, stdio = ['inherit', 2, 2]) {
  return new Promise((resolve, reject) => {
    const child = spawn(command.program, command.args, { ...settings(command), stdio });
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/**
 * As `run`, but keeps what the command wrote, to be shown in one piece when several run side by side.
 * @param {Command} command
 * @returns {Promise<{ code: number, output: string }>}
 */
export function runQuietly(command) {
  return new Promise((resolve, reject) => {
    const child = spawn(command.program, command.args, {
      ...settings(command),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    const keep = (/** @type {Buffer} */ piece) => {
      output += piece.toString();
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}
