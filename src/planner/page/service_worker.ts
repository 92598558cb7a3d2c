//! Slabtide planner: keeps the page on the device. It opens without a network, and a newer one takes its place the
//! next time. Jobs are not here; the page keeps them itself.
export {};

declare const self: ServiceWorkerGlobalScope;
declare const version: string; // put in its place by build.mjs

const kept = `slabtide-${version}`;
const files = ['./', 'manifest.webmanifest', 'icon-192.png', 'icon-512.png'];

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(kept).then((cache) => cache.addAll(files)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(caches.keys()
    .then((names) => Promise.all(names.filter((name) => name.startsWith('slabtide-') && name !== kept).map((name) => caches.delete(name))))
    .then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  const wanted = request.mode === 'navigate' ? './' : request;
  event.respondWith(caches.open(kept).then(async (cache) => (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request)));
});
