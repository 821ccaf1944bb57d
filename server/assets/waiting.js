// Deeds that wait on this device while the network is away. One store for all forms (IndexedDB): what cannot be sent
// waits there, goes through once and in order when the line is back, and what is refused then stays until somebody
// chooses. Ids are made before anything is sent, so twice is harmless. No text stands here.
"use strict";

const waiting = {
  // How long an answer is waited for before the line counts as dead, and the device's own store as none, in ms.
  patience: 5000,
  storePatience: 2000,

  id() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
    return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
  },

  open() {
    waiting.opened ??= new Promise((resolve, reject) => {
      const asked = indexedDB.open("gambrel", 1);
      asked.onupgradeneeded = () => {
        waiting.making = asked.transaction;
        asked.result.createObjectStore("deeds", { keyPath: "nth", autoIncrement: true }).createIndex("id", "id", { unique: true });
        asked.result.createObjectStore("slips");
      };
      asked.onsuccess = () => {
        waiting.making = null;
        asked.result.onversionchange = () => waiting.close();
        resolve(asked.result);
      };
      asked.onerror = () => reject(asked.error);
    });
    return waiting.opened;
  },

  // A page that is left lets go of the store: half made, it would answer no other page any more.
  close() {
    const { opened, making } = waiting;
    waiting.opened = null;
    waiting.making = null;
    opened?.then((db) => db.close(), () => {});
    try {
      making?.abort();
    } catch {
      // It was made just now.
    }
  },

  // A device whose store does not answer is one without a store: nobody stands before a button that does nothing.
  soon(work) {
    let timer;
    const late = new Promise((_, reject) => {
      timer = setTimeout(() => {
        waiting.close();
        reject(new Error("the store of this device does not answer"));
      }, waiting.storePatience);
    });
    return Promise.race([work, late]).finally(() => clearTimeout(timer));
  },

  // One transaction; what the work's request found.
  within(stores, mode, work) {
    const deal = async () => {
      const db = await waiting.open();
      return new Promise((resolve, reject) => {
        const deal = db.transaction(stores, mode);
        let found;
        const keep = (request) => { request.onsuccess = () => { found = request.result; }; };
        work(deal, keep);
        deal.oncomplete = () => resolve(found);
        deal.onabort = () => reject(deal.error);
      });
    };
    return waiting.soon(deal());
  },

  // Was anything ever kept here? The store is made with the first deed that waits, not by a page that is left at once.
  async isMade() {
    const stores = waiting.opened || !indexedDB.databases ? null : await waiting.soon(indexedDB.databases());
    return stores === null || stores.some(({ name }) => name === "gambrel");
  },

  async all() {
    const read = (deal, keep) => keep(deal.objectStore("deeds").getAll());
    return (await waiting.isMade()) ? waiting.within(["deeds"], "readonly", read) : [];
  },

  async save(row) {
    await waiting.within(["deeds"], "readwrite", (deal) => deal.objectStore("deeds").put(row));
    return row;
  },

  // Changes what is kept of a row as it is now: somebody may have undone it meanwhile.
  async change(row, fields) {
    let now = null;
    await waiting.within(["deeds"], "readwrite", (deal) => {
      const rows = deal.objectStore("deeds");
      rows.get(row.nth).onsuccess = ({ target }) => {
        if (target.result) {
          now = { ...target.result, ...fields(target.result) };
          rows.put(now);
        }
      };
    });
    return now;
  },

  async drop(rows) {
    await waiting.within(["deeds"], "readwrite", (deal) => rows.forEach((row) => deal.objectStore("deeds").delete(row.nth)));
  },

  // The number of the next slip: a letter of this device, and a count.
  async slip() {
    const letters = "ACEHKLMNPRTUVWXY";
    let slip = null;
    await waiting.within(["slips"], "readwrite", (deal) => {
      const slips = deal.objectStore("slips");
      const asked = slips.get("last");
      asked.onsuccess = () => {
        const made = () => letters[crypto.getRandomValues(new Uint8Array(1))[0] % letters.length];
        slip = asked.result ?? { letter: made(), count: 0 };
        slip.count = (slip.count % 999) + 1;
        slips.put(slip, "last");
      };
    });
    return `${slip.letter}${slip.count}`;
  },

  // Keeps the deeds of one press. What is kept already under the same id is not kept twice.
  async keep(press, deeds) {
    const known = (await waiting.all()).find((row) => row.id === deeds[0].id);
    if (known) {
      await waiting.save({ ...known, state: "waits" });
      waiting.render();
      return known;
    }
    const slip = await waiting.slip();
    const whole = { ...press, slip, press: deeds[0].id, kept: Date.now(), state: "waits" };
    const rows = deeds.map((deed) => ({ ...whole, ...deed }));
    await waiting.within(["deeds"], "readwrite", (deal) => rows.forEach((row) => deal.objectStore("deeds").add(row)));
    waiting.render();
    return rows[0];
  },

  // What was kept is not wanted after all. If it had arrived without our knowing, it is voided when the line is back.
  async takeOut(id, why) {
    const rows = (await waiting.all()).filter((row) => row.press === id && row.state === "waits");
    const out = await Promise.all(rows.map((row) => waiting.change(row, (was) => (was.state === "waits" ? { state: "undone", why } : {}))));
    waiting.render();
    return out.length > 0 && out.every((row) => row?.state === "undone");
  },

  // ---- through

  async ask(path, asked, patience = waiting.patience) {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), patience);
    try {
      const response = await fetch(path, { signal: stop.signal, ...asked });
      return { status: response.status, answer: await response.json() };
    } catch {
      return { status: 0 };
    } finally {
      clearTimeout(timer);
    }
  },

  post(path, body) {
    return waiting.ask(path, { method: "POST", headers: { "Content-Type": "application/json", "Accept-Language": document.documentElement.lang }, body: JSON.stringify(body) });
  },

  // Sends what waits: "clear" where nothing waits any more, "away" where nobody answers, "held" where somebody has to
  // sign in first, "unread" where this device's own store does not answer. Of several windows one sends.
  flush() {
    waiting.running ??= waiting.alone(waiting.send).catch(() => "away").then((end) => {
      waiting.running = null;
      // The line is there, and nobody is signed in: that is no dead line.
      const was = waiting.isHeld;
      waiting.isHeld = end === "held";
      return was === waiting.isHeld ? end : waiting.render().then(() => end, () => end);
    });
    return waiting.running;
  },

  alone(work) {
    return navigator.locks ? navigator.locks.request("gambrel-waiting", work) : work();
  },

  async send() {
    const all = await waiting.all().catch(() => null);
    if (!all) {
      return "unread";
    }
    const rows = all.filter((row) => ["waits", "undone"].includes(row.state));
    if (rows.length === 0) {
      return "clear";
    }
    const health = await waiting.ask("/api/health", { cache: "no-store" });
    if (health.status !== 200) {
      return "away";
    }
    // The kitchen's clock and this device's may differ: what counts is how long ago it was.
    const ahead = Date.parse(health.answer.now) - Date.now();
    for (const row of rows) {
      const end = row.state === "undone" ? await waiting.unmake(row) : await waiting.one(row, ahead);
      if (end) {
        waiting.render();
        return end;
      }
    }
    waiting.render();
    return "clear";
  },

  // What stands in the way of going on, if anything does.
  stops(status) {
    if ([0, 429, 502, 503, 504].includes(status)) {
      return "away";
    }
    return status === 401 ? "held" : null;
  },

  // One deed. It may have arrived before, and only the answer been lost.
  async one(row, ahead) {
    if (row.tried) {
      const before = await waiting.ask(`/api/steps/${row.id}`);
      if (waiting.stops(before.status)) {
        return waiting.stops(before.status);
      }
      if (before.status === 200) {
        return waiting.through(row, before.answer);
      }
    }
    // From now on it is sent so and no other way.
    const at = row.at ?? row.body.at ?? new Date(Math.min(row.kept, Date.now()) + ahead).toISOString();
    const now = await waiting.change(row, () => ({ at, tried: true }));
    if (now?.state !== "waits") {
      return now ? waiting.unmake(now) : null;
    }
    row = now;
    const { status, answer } = await waiting.post(row.path, { id: row.id, ...(row.by ? { by: row.by } : {}), ...row.body, at: row.at });
    if (waiting.stops(status)) {
      return waiting.stops(status);
    }
    // Its id is its own: who has it already has the deed.
    if (status < 300 || answer.type === "/problems/id-used") {
      return waiting.through(row, answer);
    }
    await waiting.change(row, (was) => (was.state === "undone" ? {} : { state: "refused", problem: answer }));
    return null;
  },

  async through(row, answer) {
    // Undone while it was on its way: it has arrived, and is voided.
    const made = row.makes ? (answer.lots ?? []).map(({ code, shown }) => ({ code, shown })) : [];
    const was = await waiting.change(row, () => ({ tried: true }));
    if (was?.state !== "undone" && row.printer) {
      await waiting.post("/api/prints", { id: row.print, printer: row.printer, step: row.id });
    }
    const now = await waiting.change(row, ({ state }) => (state === "undone" ? {} : { state: "done", made, labels: row.makes ? answer.labels : undefined }));
    if (now?.state === "undone") {
      return waiting.unmake(now);
    }
    document.dispatchEvent(new CustomEvent("deed-through", { detail: row.id }));
    return null;
  },

  async unmake(row) {
    const before = row.tried ? await waiting.ask(`/api/steps/${row.id}`) : { status: 404 };
    if (waiting.stops(before.status)) {
      return waiting.stops(before.status);
    }
    if (before.status === 200 && !before.answer.voided) {
      row.unmade ??= waiting.id();
      await waiting.save(row);
      const { status } = await waiting.post(`/api/steps/${row.id}/void`, { id: row.unmade, why: row.why });
      if (waiting.stops(status)) {
        return waiting.stops(status);
      }
    }
    await waiting.drop([row]);
    return null;
  },

  // ---- on the frame of every page

  // The rows of a state, by press.
  presses(rows, state) {
    const found = new Map();
    for (const row of rows.filter((one) => one.state === state)) {
      found.set(row.press, [...(found.get(row.press) ?? []), row]);
    }
    return [...found.values()];
  },

  async render() {
    const rows = await waiting.all();
    const who = document.querySelector("[data-who]")?.dataset.who ?? "";
    const of = { waits: rows, refused: rows, done: rows.filter((row) => !row.by || row.by === who) };
    for (const line of document.querySelectorAll("[data-line]")) {
      const state = line.dataset.line;
      const n = state === "refused" ? rows.filter((row) => row.state === state).length : waiting.presses(of[state], state).length;
      line.hidden = n === 0;
      line.textContent = ((waiting.isHeld && line.dataset.held) || line.dataset.says).replace("[n]", n);
    }
    document.dispatchEvent(new CustomEvent("waiting", { detail: rows }));
    return rows;
  },

  // Tells what became of a press whose slip is shown, once nothing of it waits any more.
  follow(press, tell) {
    const look = ({ detail }) => {
      const rows = detail.filter((row) => row.press === press);
      if (rows.length > 0 && rows.every((row) => ["done", "refused"].includes(row.state))) {
        document.removeEventListener("waiting", look);
        tell(rows);
      }
    };
    document.addEventListener("waiting", look);
  },

  // An hour and its minutes as the pages write them: 18:21, in French 18 h 21, in the United States 6:21 pm.
  hour(moment, more = {}) {
    const { lang, dataset } = document.documentElement;
    const said = { hour: "numeric", minute: "2-digit", hourCycle: dataset.clock ?? "h23", ...more };
    const told = new Date(moment).toLocaleTimeString(lang, said);
    const hour = told.replace(/\s?([ap])m$/i, (_, half) => `\u00a0${half.toLowerCase()}m`);
    return lang === "fr" ? hour.replace(/0?(\d+):(\d\d)/, "$1\u00a0h\u00a0$2") : hour;
  },

  // What stands between a name and what is said of it.
  colon() {
    return document.documentElement.lang === "fr" ? "\u00a0: " : ": ";
  },

  // The line is gone, or there again, as far as this device knows.
  line() {
    document.querySelectorAll("[data-off]").forEach((told) => { told.hidden = navigator.onLine; });
    if (!navigator.onLine) {
      waiting.asOf();
    }
  },

  // An hour over a page is that at which the page was made: it stands still, and says so.
  asOf() {
    document.querySelectorAll("[data-as-of]").forEach((told) => { told.textContent = told.dataset.asOf; });
  },

  // This page was kept from before, and comes from this device.
  stale() {
    const told = document.querySelector("[data-stale]");
    if (told && told.dataset.stale) {
      const at = waiting.hour(told.dataset.stale);
      told.textContent = told.dataset.says.replace("[time]", at);
      told.hidden = false;
      waiting.asOf();
    }
  },

  async tick() {
    const rows = await waiting.all().catch(() => []);
    if (rows.some((row) => ["waits", "undone"].includes(row.state))) {
      await waiting.flush();
    }
  },
};

if (window.indexedDB) {
  waiting.stale();
  document.addEventListener("DOMContentLoaded", async () => {
    await waiting.render().catch(() => {});
    await waiting.tick();
  });
  window.addEventListener("pagehide", () => waiting.close());
  window.addEventListener("online", () => waiting.tick());
  window.addEventListener("online", waiting.line);
  window.addEventListener("offline", waiting.line);
  document.addEventListener("visibilitychange", () => document.hidden || waiting.tick());
  setInterval(() => waiting.tick(), 5000);
}

// Pages of the bench open without the network, where the connection is one that a browser trusts with that.
if (window.isSecureContext && navigator.serviceWorker) {
  navigator.serviceWorker.register("/worker.js").catch(() => {});
}
