// The offline copy. One cache per build, filled whole or not at all.
//
// tools/precache.mjs writes the build's files and their hash into the two
// constants below. Each file is fetched with its hash, so a login page that
// answers in place of a file, or half a file, fails the whole install and the
// version that is already kept goes on.
//
// A new version waits. It takes over only when the page says so, because a
// test may be running on it.

const VERSION = '__VERSION__';
const FILES = __FILES__;

const PREFIX = 'coldsump-';
const CACHE = PREFIX + VERSION;

self.addEventListener('install', (event) => {
  const requests = FILES.map(
    ([url, integrity]) => new Request(url, { cache: 'no-cache', integrity }),
  );
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(requests))
      .catch(async (error) => {
        await caches.delete(CACHE);
        throw error;
      }),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      const names = await caches.keys();
      const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
      await Promise.all(old.map((name) => caches.delete(name)));
      await self.clients.claim();
    })(),
  );
});

self.addEventListener('message', (event) => {
  if (event.data?.type === 'take-over') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const { origin, pathname } = new URL(request.url);
  if (origin !== self.location.origin) return;
  if (pathname.endsWith('/notices.txt')) return; // from the server alone
  const wanted = request.mode === 'navigate' ? './' : request;
  event.respondWith(
    (async () => {
      const cache = await caches.open(CACHE);
      const kept = await cache.match(wanted);
      if (kept) return kept;
      // Lost from the cache: checked as it was then, where the page did not ask for it.
      const [, integrity] = FILES.find(([url]) => request.url.endsWith(`/${url}`)) ?? [];
      return fetch(request, integrity && !request.integrity ? { integrity } : undefined);
    })(),
  );
});
