// Keeps the page on the phone, so that it opens with no network. The build fills in the version and
// the files: the address of each, and the hash of its contents.
const version = __VERSION__;
const files = __FILES__;

// One shelf a version. The scope is in the name because another folder of the same host may hold
// another copy of the page, whose shelves are not ours to clear.
const ourShelves = `offplumb ${self.registration.scope} `;
const shelf = ourShelves + version;
const start = self.registration.scope;
const kept = new Set(files.map(([path]) => new URL(path, start).href));

// The hash makes the browser refuse a file that is not the one built: half of a new version, or the
// sign-in page of a harbour's network. Then this version is not kept, the one before goes on, and
// the browser tries again at a later visit.
function requestFor([path, integrity]) {
  const cache = path.startsWith('./assets/') ? 'default' : 'no-cache';
  return new Request(path, { integrity, cache });
}

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(shelf).then((open) => open.addAll(files.map(requestFor))));
});

async function clearOlderShelves() {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(ourShelves) && name !== shelf);
  await Promise.all(older.map((name) => caches.delete(name)));
}

// A new version comes here only when no page of the older one is open, or when its one page asked
// for it: an open page never loses the files it may yet need.
self.addEventListener('activate', (event) => {
  event.waitUntil(clearOlderShelves().then(() => self.clients.claim()));
});

async function takeOver(port) {
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const alone = windows.filter((client) => client.url.startsWith(start)).length <= 1;
  port?.postMessage(alone);
  if (alone) await self.skipWaiting();
}

self.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(takeOver(event.ports[0]));
});

/** The address under which a request's answer is kept; none: it is not a file of the page. */
function keptAddress(request) {
  const url = new URL(request.url);
  url.hash = '';
  if (request.mode === 'navigate') {
    url.search = '';
    return url.href === start || url.href === `${start}index.html` ? start : undefined;
  }
  return kept.has(url.href) ? url.href : undefined;
}

async function answer(request, address) {
  const open = await caches.open(shelf);
  return (await open.match(address, { ignoreVary: true })) ?? fetch(request);
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const address = keptAddress(request);
  if (address) event.respondWith(answer(request, address));
});
