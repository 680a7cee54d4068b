/**
 * Answers that the kept copy of the site gives in a way of its own, before the worker's general way is asked.
 * Read by the service worker as it stands.
 */
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (address.origin !== self.location.origin) return;
  if (request.destination === 'worker') {
    event.stopImmediatePropagation();
    event.respondWith(workerScript(request));
  } else if (address.pathname.endsWith('/here.json')) {
    event.stopImmediatePropagation();
    // Where no server answers there is no network to tell of.
    event.respondWith(fetch(request).catch(() => new Response(null, { status: 204 })));
  } else if (request.mode === 'navigate' && /\/[^/.]+$/.test(address.pathname)) {
    event.stopImmediatePropagation();
    event.respondWith(withLastSlash(request, address));
  }
});

/** A kept answer would take the place of the worker's own address, and with it the part after the # that tells the worker what to load: a new one leaves it. */
async function workerScript(request) {
  const kept = await caches.match(request, { ignoreSearch: true });
  if (!kept) return fetch(request);
  return new Response(kept.body, { status: kept.status, headers: kept.headers });
}

/** Screens are kept with a slash at the end of their address; people type it without. */
async function withLastSlash(request, address) {
  const path = `${address.pathname}/`;
  if (await caches.match(`${address.origin}${path}index.html`, { ignoreSearch: true })) {
    return Response.redirect(`${address.origin}${path}${address.search}`, 302);
  }
  try {
    return await fetch(request);
  } catch (unreachable) {
    const notHere = await caches.match(`${address.origin}/404.html`, { ignoreSearch: true });
    if (!notHere) throw unreachable;
    return notHere;
  }
}
