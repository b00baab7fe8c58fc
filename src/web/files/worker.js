// Keeps the pages where finds are logged, and the files of all pages, so that they open without a connection.
// What the bench answers goes before what is kept.
const kept = 'beadbook-pages-1';
const files = ['/files/bench.css', '/files/picture.css', '/files/bench.js', '/files/outbox.js', '/files/log.js', '/files/line.js', '/files/photo.js', '/files/bead.svg'];

self.addEventListener('install', event => {
    event.waitUntil(caches.open(kept).then(cache => cache.addAll(files)).then(() => self.skipWaiting()));
});
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

const isKept = url => url.origin === location.origin &&
    (url.pathname.startsWith('/files/') || /^\/coupon\/[^/]+\/exam\/\d+$/.test(url.pathname));

self.addEventListener('fetch', event => {
    const { request } = event;
    const url = new URL(request.url);
    if (request.method !== 'GET' || !isKept(url) || request.headers.has('X-Bench-Part')) return;
    event.respondWith((async () => {
        const cache = await caches.open(kept);
        try {
            const answer = await fetch(request);
            if (answer.ok) await cache.put(request, answer.clone());
            return answer;
        } catch (failed) {
            const before = await cache.match(request);
            if (before) return before;
            throw failed;
        }
    })());
});
