import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { removeProfiles } from './removeProfiles';

declare module 'vitest' {
  export interface ProvidedContext {
    siteUrl: string;
    /** Folder for the profiles of the browsers and for what tests save, gone when the run ends. */
    profiles: string;
  }
}

/** Serves the built page for the site tests, inside this process: no server is left behind when the run ends. */
export default async function serveSite(project: TestProject): Promise<() => Promise<void>> {
  const server = await preview({ preview: { port: 0, host: '127.0.0.1' }, logLevel: 'error' });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error('The built page is not being served: run `npm run build` first.');
  project.provide('siteUrl', address);
  const profiles = mkdtempSync(join(tmpdir(), 'quietpour-profiles-'));
  project.provide('profiles', profiles);
  return async () => {
    await server.close();
    await removeProfiles(profiles);
  };
}
