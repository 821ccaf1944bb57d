// The counter. A scan is typing plus Enter: the answer is fetched and takes the place of what was on the
// screen, so that the page stays the one that was tapped once and may make a sound. Without this script the same
// addresses are pages. No text stands here.
"use strict";

const counter = {
  sound: null,

  // High and low, short and long, by the word: the same order as its shapes. Hertz and seconds.
  tones: {
    "sell": [[1320, 0.14]],
    "sell-today": [[1320, 0.12], [1320, 0.12]],
    "hold": [[330, 0.16], [330, 0.16], [330, 0.16]],
    "pull": [[220, 0.7]],
    "not-for-sale": [[330, 0.16], [330, 0.16]],
    "gone": [[990, 0.14], [330, 0.2]],
    "sold-here": [[990, 0.14], [330, 0.2]],
    "unknown": [],
  },

  // No sound before somebody tapped: then this page may make one.
  wake() {
    const Audio = window.AudioContext || window.webkitAudioContext;
    if (!counter.sound && Audio) {
      counter.sound = new Audio();
    }
    counter.sound?.resume();
  },

  play(verdict) {
    const tones = counter.tones[verdict] ?? [];
    if (!counter.sound || tones.length === 0) {
      return;
    }
    document.documentElement.dataset.played = verdict;
    let at = counter.sound.currentTime + 0.01;
    for (const [hertz, seconds] of tones) {
      const tone = counter.sound.createOscillator();
      const loud = counter.sound.createGain();
      tone.type = hertz < 500 ? "square" : "sine";
      tone.frequency.value = hertz;
      loud.gain.setValueAtTime(0.0001, at);
      loud.gain.exponentialRampToValueAtTime(0.25, at + 0.01);
      loud.gain.exponentialRampToValueAtTime(0.0001, at + seconds);
      tone.connect(loud).connect(counter.sound.destination);
      tone.start(at);
      tone.stop(at + seconds);
      at += seconds + 0.07;
    }
  },

  field() {
    return document.querySelector("[data-scan]");
  },

  // Shows what an address of the counter answers.
  async go(href, kept = true) {
    const nth = (counter.nth = (counter.nth ?? 0) + 1);
    // What this device sold itself is known before the word is shown: no green flashes up in between.
    const own = unsent.look();
    let page;
    try {
      const response = await fetch(href, { headers: { Accept: "text/html" } });
      if (response.redirected && new URL(response.url).pathname !== "/counter") {
        window.location.assign(href);
        return;
      }
      page = new DOMParser().parseFromString(await response.text(), "text/html");
    } catch {
      await own;
      if (nth === counter.nth) {
        counter.noLine(href);
      }
      return;
    }
    await own;
    // Somebody has scanned the next one meanwhile.
    if (nth !== counter.nth) {
      return;
    }
    camera.close();
    document.querySelector("main").replaceWith(document.adoptNode(page.querySelector("main")));
    document.title = page.title;
    const [mine, theirs] = [document, page].map((of) => of.querySelector("[data-counter] [name=with]"));
    if (mine && theirs) {
      mine.value = theirs.value;
      mine.disabled = theirs.disabled;
    }
    if (kept) {
      window.history.pushState({}, "", href);
    }
    window.scrollTo(0, 0);
    counter.shown();
  },

  // Nobody answers: a scan has no word now, and that is said in its stead.
  noLine(href) {
    const words = document.querySelector("template[data-no-line]");
    if (!words) {
      window.location.assign(href);
      return;
    }
    const asked = new URL(href, window.location.origin).searchParams.get("code") ?? "";
    document.querySelectorAll("main > :not([data-told]):not(template)").forEach((part) => { part.hidden = true; });
    unsent.shown = null;
    const told = document.querySelector("[data-told]");
    const row = unsent.packs().get(unsent.key(asked));
    if (row) {
      // This device knows one thing all the same: it sold that pack.
      const section = unsent.section(row);
      section.querySelector("p").before(Object.assign(document.createElement("p"), { textContent: row.says }));
      told.replaceChildren(section, unsent.acts(row));
      counter.play("sold-here");
    } else {
      const box = words.content.cloneNode(true).firstElementChild;
      box.querySelector("[data-asked]").textContent = asked;
      box.querySelector("h1").hidden = asked === "";
      const none = box.querySelector("[data-none]");
      none.textContent = asked === "" ? none.dataset.none : none.textContent;
      told.replaceChildren(box);
      counter.play("hold");
    }
    counter.field().focus({ preventScroll: true });
  },

  // What is on the screen now: its sound, and what this device can do besides.
  shown() {
    unsent.shown = null;
    unsent.mark();
    const word = document.querySelector("[data-verdict]");
    if (word) {
      counter.play(word.dataset.verdict);
    }
    camera.offer();
    const how = document.querySelector("[data-sound-how]");
    if (how) {
      how.hidden = counter.sound !== null;
    }
    if (counter.field() && !document.querySelector("[role=alert]")) {
      counter.field().focus({ preventScroll: true });
    }
  },

  // Where a scan leads: to its word, with what the guest has already.
  scanned(code) {
    const to = new URL("/counter", window.location.origin);
    to.searchParams.set("code", code.trim());
    const before = document.querySelector("[data-counter] [name=with]");
    if (before && before.value !== "") {
      to.searchParams.set("with", before.value);
    }
    return counter.go(to.href);
  },
};

// What this device sold itself and could not send yet: the kitchen's word on it is older than that.
const unsent = {
  rows: [],
  // The verdict that one of those took the place of.
  shown: null,

  async look() {
    unsent.rows = await waiting.all().catch(() => unsent.rows);
  },

  // A code as a deed names it: whatever the scanner read around it, and worn letters as they are meant.
  key(text) {
    const said = text.trim().toUpperCase().replace(/[?#].*$/, "");
    const [, lot, pack] = said.match(/(?:^|\/(?:L|LOTS|10)\/)([0-9A-Z-]{11,18})\s*\/\s*(?:21\/)?(\d{1,5})\/?$/) ?? [];
    return lot ? `${lot.replaceAll("-", "").replaceAll("O", "0").replace(/[IL]/g, "1")}/${Number(pack)}` : "";
  },

  packs() {
    const found = new Map();
    for (const row of unsent.rows.filter(({ state, path }) => state === "waits" && path === "/api/departures")) {
      (row.body.packs ?? []).forEach((pack) => found.set(`${String(row.body.lot).replaceAll("-", "")}/${pack}`, row));
    }
    return found;
  },

  section(row) {
    const section = document.querySelector("template[data-sold-here]").content.cloneNode(true).firstElementChild;
    const [word, says] = [section.querySelector("strong"), section.querySelector("p")];
    word.textContent = row.body.kind === "sell" ? word.dataset.sell : word.dataset.other;
    says.textContent = says.dataset.waitsHere.replace("[slip]", row.slip);
    return section;
  },

  // What is done with it: undone, or the next one.
  acts(row) {
    const acts = document.querySelector("template[data-sold-here-acts]").content.cloneNode(true).firstElementChild;
    acts.querySelector("[data-next]").addEventListener("click", unsent.next);
    acts.querySelector("[data-not-sold]").addEventListener("click", async () => {
      if (await waiting.takeOut(row.press, row.undo)) {
        document.querySelector("[data-told]").replaceChildren(document.querySelector("template[data-taken-out]").content.cloneNode(true));
      }
    });
    return acts;
  },

  next() {
    counter.go("/counter");
  },

  // Says so where the page has another word for it.
  mark() {
    const sold = unsent.packs();
    const verdict = document.querySelector("main [data-verdict][data-pack]");
    const row = verdict && sold.get(verdict.dataset.pack);
    if (row && !unsent.shown) {
      const section = unsent.section(row);
      const thumb = document.querySelector("main > .thumb");
      const own = document.querySelector("[data-told] [data-slip]") ? document.createDocumentFragment() : unsent.acts(row);
      unsent.shown = { id: row.id, section, verdict, thumb, own };
      verdict.replaceWith(section);
      if (thumb) {
        thumb.hidden = true;
        thumb.after(own);
      }
    } else if (unsent.shown) {
      unsent.unmark();
    }
    // Of several packs, and of packs to choose from, those that are gone already.
    const { more } = document.querySelector("template[data-sold-here]").dataset;
    for (const part of document.querySelectorAll(".basket li[data-pack], .choices a[href*='code=']")) {
      const pack = part.dataset.pack ?? new URL(part.href).searchParams.get("code");
      const there = part.querySelector("[data-sold-more]");
      if (sold.has(pack) && !there) {
        const said = Object.assign(document.createElement(part.matches("a") ? "small" : "b"), { textContent: more });
        said.dataset.soldMore = "";
        (part.querySelector("span") ?? part).append(said);
      } else if (!sold.has(pack)) {
        there?.remove();
      }
    }
    document.querySelectorAll("main form[data-sells]").forEach((form) => {
      const deeds = JSON.parse(form.dataset.sells);
      const again = deeds.some(({ lot, packs }) => packs.some((pack) => sold.has(`${lot}/${pack}`)));
      form.hidden = again || (form.hidden && Boolean(document.querySelector("[data-told] [data-slip]")));
    });
  },

  // It was undone or refused: the word is the kitchen's again. It went through: then that is said.
  unmark() {
    const { id, section, verdict, thumb, own } = unsent.shown;
    const row = unsent.rows.find((one) => one.id === id);
    if (row?.state === "waits") {
      return;
    }
    if (row?.state === "done") {
      const says = section.querySelector("p");
      says.textContent = says.dataset.went.replace("[slip]", row.slip);
      return;
    }
    section.replaceWith(verdict);
    if (thumb) {
      thumb.hidden = false;
    }
    own.remove?.();
    unsent.shown = null;
  },
};

document.addEventListener("waiting", ({ detail }) => {
  unsent.rows = detail;
  unsent.mark();
});

// The same pack is not sold twice: one more is the next one.
document.addEventListener("once-more", (event) => {
  event.preventDefault();
  unsent.next();
});
document.addEventListener("deed-waits", () => {
  const more = document.querySelector("[data-told] [data-once-more]");
  if (more) {
    more.textContent = document.querySelector("template[data-sold-here-acts]").content.querySelector("[data-next]").textContent;
  }
});

document.addEventListener("pointerdown", counter.wake);

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (form.matches("[data-counter]")) {
    event.preventDefault();
    const field = counter.field();
    const code = field.value;
    field.value = "";
    // Some scanners press Enter twice.
    if (code.trim() !== "") {
      counter.scanned(code);
    }
  }
});

// What leads from the counter to the counter stays on this page.
document.addEventListener("click", (event) => {
  const link = event.target.closest("a[href]");
  const plain = !event.ctrlKey && !event.metaKey && !event.shiftKey && event.button === 0;
  if (link && plain && new URL(link.href).pathname === "/counter") {
    event.preventDefault();
    counter.go(link.href);
  } else if (event.target.closest("[data-type]")) {
    counter.field().focus();
  }
});

// A deed of another form was done: what it says is shown here.
document.addEventListener("deed-done", (event) => {
  if (new URL(event.detail).pathname === "/counter") {
    event.preventDefault();
    counter.go(event.detail);
  }
});

window.addEventListener("popstate", () => counter.go(window.location.href, false));
unsent.look().then(counter.shown);
