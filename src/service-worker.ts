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

const PREFIX = 'quietpour ';
const STORE = PREFIX + version;
/** What a page of the guide is made from stands in the page already. */
const PAGES = prerendered.filter((path) => !path.endsWith('__data.json'));
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
  return (await store.match(wanted)) ?? (await caches.match(wanted)) ?? keeping(request, store);
}

/** Files that only the guide shows, its pictures, are many and large: they are fetched when seen, and then put by too. */
const ON_DEMAND = /\/_app\/immutable\/assets\//;

async function keeping(request: Request, store: Cache): Promise<Response> {
  const response = await fetch(request);
  if (response.ok && ON_DEMAND.test(request.url)) await store.put(request, response.clone());
  return response;
}

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs = new URL(request.url).origin === worker.location.origin;
  if (request.method === 'GET' && isOurs) event.respondWith(answer(request));
});
