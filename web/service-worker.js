// Keeps the whole calculator on the device, so that it opens without a connection from the first visit on.
//
// A version is all the files of one build. It is fetched as a whole or not at all, lies in a cache of its own, and goes
// on answering the pages that were opened with it until the last of them is gone: no page ever gets a mix of versions.
//
// `cargo xtask build` puts two constants in front of this text:
//   VERSION, which stands for the content of all the files, and
//   FILES, a list of [address below the start page, hash of the content as for `integrity`].

/* global VERSION, FILES */

const SCOPE = registration.scope;
// Other copies of the calculator may lie on the same host, under other paths.
const PREFIX = `kerbstead ${SCOPE} `;
const NAME = PREFIX + VERSION;
const ADDRESSES = new Set(FILES.map(([path]) => new URL(path, SCOPE).href));

addEventListener("install", (event) => event.waitUntil(fetchVersion()));

addEventListener("activate", (event) => event.waitUntil(begin()));

addEventListener("message", (event) => {
  if (event.data === "take over") skipWaiting();
  if (event.data === "tidy up") event.waitUntil(tidyUp());
});

addEventListener("fetch", (event) => {
  const { request } = event;
  const address = addressOf(request.url);
  if (request.method !== "GET" || !address.startsWith(SCOPE)) return;
  if (ADDRESSES.has(address)) event.respondWith(ownFile(address));
  else if (request.mode === "navigate") event.respondWith(otherPage(request));
  else event.respondWith(otherFile(request));
});

/** The address without what does not name a file; the start page under one name. */
function addressOf(url) {
  const address = url.split(/[?#]/)[0];
  return address === `${SCOPE}index.html` ? SCOPE : address;
}

/** Fetches all files, and keeps them only when all have come. Should one not come, the browser tries again later. */
async function fetchVersion() {
  const responses = await Promise.all(FILES.map(fetchFile));
  const cache = await caches.open(NAME);
  try {
    await Promise.all(responses.map((response, index) => cache.put(FILES[index][0], response)));
  } catch (error) {
    // The storage is full. Half a version is of no use to anyone.
    await caches.delete(NAME);
    throw error;
  }
}

/**
 * Fetches a file and has the browser compare its hash, so that nothing comes in from another version, a broken download
 * or a login page of a public network. What the browser still has from loading the page need not come again.
 */
async function fetchFile([path, integrity]) {
  const response = await fetch(path, { integrity }).catch(() => fetch(path, { integrity, cache: "reload" }));
  // A redirected answer may not be given to a navigation.
  return response.redirected ? new Response(response.body, response) : response;
}

/** At the first visit the open page is taken on at once; later versions leave open pages to the one they came from. */
async function begin() {
  if ((await otherVersions()).length === 0) await clients.claim();
  await tidyUp();
}

/** A file of this version. The network is asked only if the person has emptied the cache meanwhile. */
async function ownFile(address) {
  return (await caches.match(address, { cacheName: NAME, ignoreVary: true })) ?? fetch(address);
}

/** A page that is none of ours: from the host, or else the start page. */
function otherPage(request) {
  return fetch(request).catch(() => Response.redirect(SCOPE));
}

/** A file that an open page of another version asks for, or one that no version has. */
async function otherFile(request) {
  return (await caches.match(request, { ignoreVary: true })) ?? fetch(request);
}

/** The caches of versions before this one, and of one that is arriving. */
async function otherVersions() {
  return (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME);
}

/** Removes the versions that no page holds any more. Each page holds a lock with the name of its version's cache. */
async function tidyUp() {
  if (!navigator.locks) return;
  const { held } = await navigator.locks.query();
  const needed = new Set(held.map((lock) => lock.name));
  const others = await otherVersions();
  // One of the others may be arriving; the page that brings it in will have this done again.
  if (registration.installing || registration.waiting) return;
  await Promise.all(others.filter((name) => !needed.has(name)).map((name) => caches.delete(name)));
}
