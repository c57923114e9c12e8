/// <reference types="@sveltejs/kit" />
/// <reference no-default-lib="true"/>
/// <reference lib="esnext" />
/// <reference lib="webworker" />

/**
 * The page without a network: every file of this version is put by at the first visit and served from there. A newer
 * version is put by beside it and waits until the page asks for it, so that no work is interrupted.
 */
import { build, files, prerendered, version } from '$service-worker';

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

/** The page of the guide that is as long as all others together. */
const LATE = /\/guide\/verification\/?$/;
/** It, and files that only the guide shows, its pictures, are many and large: they are fetched when seen, and then put by too. */
const isOnDemand = (path: string): boolean => /\/_app\/immutable\/assets\//.test(path) || LATE.test(path);

const PREFIX = 'quietpour ';
const STORE = PREFIX + version;
/** What a page of the guide is made from stands in the page already. */
const PAGES = prerendered.filter((path) => !path.endsWith('__data.json') && !LATE.test(path));
const FILES = [...build, ...files, ...PAGES].map((path) => new URL(path, worker.location.href).href);

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(STORE).then((store) => store.addAll(FILES)));
});

/** The version before is kept: another tab may still run it and fetch a part of it. */
async function dropOldStores(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== STORE);
  await Promise.all(old.slice(0, -1).map((name) => caches.delete(name)));
}

worker.addEventListener('activate', (event) => event.waitUntil(dropOldStores()));

worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting();
});

async function answer(request: Request): Promise<Response> {
  const wanted = request.mode === 'navigate' ? request.url.replace(/[?#].*$/, '') : request;
  const store = await caches.open(STORE);
  const kept = await store.match(wanted);
  if (kept) return kept;
  const before = await caches.match(wanted);
  // One of the version before is out of date, and better than none.
  if (before && LATE.test(pathOf(request))) return keeping(request, wanted, store).catch(() => before);
  return before ?? keeping(request, wanted, store);
}

async function keeping(request: Request, wanted: RequestInfo, store: Cache): Promise<Response> {
  const response = await fetch(request);
  if (response.ok && isOnDemand(pathOf(request))) await store.put(wanted, response.clone());
  return response;
}

const pathOf = ({ url }: Request): string => new URL(url).pathname;

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs = new URL(request.url).origin === worker.location.origin;
  if (request.method === 'GET' && isOurs) event.respondWith(answer(request));
});
