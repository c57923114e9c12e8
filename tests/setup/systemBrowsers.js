import { join } from 'node:path';

const LINUX = [
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/opt/google/chrome/chrome',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/snap/bin/chromium',
  '/usr/bin/microsoft-edge',
];

const MAC = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const WINDOWS = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** @returns {string[]} */
function windowsPlaces() {
  const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].map((name) => process.env[name] ?? '');
  return roots.filter(Boolean).flatMap((root) => WINDOWS.map((place) => join(root, place)));
}

/** The usual places of an installed Chrome, Chromium or Edge on this system. */
export function usualPlaces() {
  if (process.platform === 'win32') return windowsPlaces();
  return process.platform === 'darwin' ? MAC : LINUX;
}
