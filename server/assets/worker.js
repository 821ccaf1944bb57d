// Keeps the pages that this device has seen, so that those of the bench open while the network is away. What is on the
// line comes first, always; what is kept says how old it is. When somebody signs in or out, the pages go.
"use strict";

const PAGES = "pages";
const FILES = "files";

// What is kept before anybody asks for it.
const AHEAD = ["/waiting", "/", "/counter", "/receive", "/make", "/places", "/adopt", "/probes", "/cure-room"];
const NEEDED = [
  "/assets/gambrel.css", "/assets/pages.css", "/assets/counter.css", "/assets/break-down.css",
  "/assets/gambrel.js", "/assets/waiting.js", "/assets/waiting-page.js", "/assets/deeds.js", "/assets/drafts.js", "/assets/refused.js", "/assets/weights.js", "/assets/bench.js", "/assets/odd.js", "/assets/place.js",
  "/assets/counter.js", "/assets/count.js", "/assets/recall.js", "/assets/lists.js", "/assets/codes.js", "/assets/papers.js", "/assets/camera.js", "/assets/break-down.js", "/assets/break-down-scale.js", "/assets/break-down-end.js",
  "/assets/regular.ttf", "/assets/bold.ttf",
];

// So many pages are kept, and the oldest go first.
const MOST = 150;
// So many pieces of the cure room have their page kept before anybody asks.
const MOST_PIECES = 60;
// So long the line is waited for where there is a page to show instead.
const PATIENCE = 5000;
// So long for a file that is kept: each page asks for several.
const FILE_PATIENCE = 2000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) {
    return;
  }
  if (request.method !== "GET") {
    if (url.pathname === "/sign-in" || url.pathname === "/sign-out" || url.pathname.startsWith("/api/sessions")) {
      event.waitUntil(caches.delete(PAGES));
    }
  } else if (request.mode === "navigate") {
    event.respondWith(page(event, url));
  } else if (url.pathname.startsWith("/assets/")) {
    event.respondWith(file(request));
  }
});

async function page(event, url) {
  const line = fetch(event.request);
  const kept = caches.open(PAGES).then((pages) => same(pages, url));
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE)).then(async () => (await kept) ?? line);
  try {
    const response = await Promise.race([line, late]);
    if (response.headers.has("x-kept-at")) {
      return told(response);
    }
    // What says what was just done is not shown again another day.
    if (is_page(response) && !url.searchParams.has("did")) {
      event.waitUntil(keep(key(url), response.clone()).then(ahead).then(() => wholly(url)));
    }
    return response;
  } catch {
    const pages = await caches.open(PAGES);
    const there = await kept;
    const lot = there || url.pathname !== "/find" ? null : await opened(pages, url.searchParams.get("q") ?? "");
    if (lot) {
      return Response.redirect(lot, 302);
    }
    const instead = there ?? (await pages.match("/waiting"));
    return instead ? told(instead, !there && url.pathname !== "/waiting") : Response.error();
  }
}

async function file(request) {
  const files = await caches.open(FILES);
  const kept = files.match(request.url);
  const line = fetch(request).then(async (response) => {
    if (response.ok) {
      await files.put(request.url, response.clone());
    }
    return response;
  });
  // A line that is there and silent holds up no page either.
  const late = new Promise((resolve) => setTimeout(resolve, FILE_PATIENCE)).then(async () => (await kept) ?? line);
  line.catch(() => {});
  try {
    return await Promise.race([line, late]);
  } catch {
    return (await kept) ?? Response.error();
  }
}

// The page of a lot that was opened here before, by its code or the end of it, where no other lot's fits: all that the
// box can find without the line.
async function opened(pages, said) {
  const word = said.toUpperCase().replace(/^.*\/(?:L|LOTS)\//, "").replace(/\s*\/\s*[0-9]+\s*$/, "").replace(/[^A-Z0-9]/g, "");
  if (word.length < 4) {
    return null;
  }
  const fits = (await pages.keys()).map((one) => new URL(one.url)).filter(({ pathname }) => {
    const [, code] = pathname.match(/^\/lots\/([A-Z0-9]+)$/) ?? [];
    return code && (code === word || code.endsWith(word));
  });
  // With another pack than the one in the hand it would be that one whose acts are offered.
  const [, number] = said.match(/\/\s*([0-9]+)\s*$/) ?? [];
  const pack = (one) => one.searchParams.get("pack") ?? undefined;
  const one = fits.find((each) => pack(each) === number) ?? fits.find((each) => pack(each) === undefined);
  return new Set(fits.map(({ pathname }) => pathname)).size === 1 ? one?.href ?? null : null;
}

function key(url) {
  const plain = new URL(url);
  plain.searchParams.delete("did");
  plain.hash = "";
  return plain.href;
}

// The page itself; of a lot and its acts also the one for which nothing was chosen beforehand, never one of other packs.
async function same(pages, url) {
  const exact = await pages.match(key(url));
  const [path, act] = url.pathname.match(/^\/lots\/[A-Z0-9]+(?:\/([a-z-]+))?$/) ?? [];
  if (exact || !path) {
    return exact;
  }
  const plain = new URL(path, url.origin).href;
  return (await pages.match(plain)) ?? (act === "weigh" ? pages.match(`${plain}?from=cure-room`) : undefined);
}

// Of a lot that was opened with one pack in the hand the page of all its packs is kept besides: without the line another one is scanned.
async function wholly(url) {
  const plain = new URL(url.pathname, url.origin).href;
  const is_one = /^\/lots\/[A-Z0-9]+$/.test(url.pathname) && url.searchParams.has("pack");
  if (!is_one || (await (await caches.open(PAGES)).match(plain))) {
    return;
  }
  const response = await fetch(plain).catch(() => null);
  if (response && is_page(response)) {
    await keep(plain, response);
  }
}

function is_page(response) {
  return response.ok && !response.redirected && (response.headers.get("Content-Type") ?? "").startsWith("text/html");
}

async function keep(address, response) {
  const pages = await caches.open(PAGES);
  const headers = new Headers(response.headers);
  headers.delete("Content-Encoding");
  headers.delete("Content-Length");
  headers.set("x-kept-at", new Date().toISOString());
  await pages.put(address, new Response(await response.blob(), { headers }));
  const all = await pages.keys();
  await Promise.all(all.slice(0, Math.max(all.length - MOST, 0)).map((one) => pages.delete(one)));
}

// The pages and files that are needed before anybody has opened them.
async function ahead() {
  const pages = await caches.open(PAGES);
  if (await pages.match("/waiting")) {
    return;
  }
  for (const path of AHEAD) {
    const response = await fetch(path).catch(() => null);
    if (response && is_page(response)) {
      await keep(new URL(path, self.location.origin).href, response);
    }
  }
  // Each piece of the cure room can be weighed then, too.
  const room = await pages.match("/cure-room");
  const found = room ? (await room.text()).matchAll(/href="(\/lots\/[A-Z0-9]+\/weigh\?from=cure-room)"/g) : [];
  for (const [, path] of Array.from(found).slice(0, MOST_PIECES)) {
    const response = await fetch(path).catch(() => null);
    if (response && is_page(response)) {
      await keep(new URL(path, self.location.origin).href, response);
    }
  }
  const files = await caches.open(FILES);
  await Promise.all(NEEDED.map((path) => files.add(path).catch(() => {})));
}

// A page that was kept says when; where another was wanted and was not kept, that is said.
async function told(response, isAnother = false) {
  const html = await response.text();
  const at = response.headers.get("x-kept-at");
  const said = isAnother ? html.replace("data-not-kept hidden", "data-not-kept") : html.replace("data-stale hidden", `data-stale="${at}" hidden`);
  return new Response(said, { headers: response.headers });
}
