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
    let page;
    try {
      const response = await fetch(href, { headers: { Accept: "text/html" } });
      if (response.redirected && new URL(response.url).pathname !== "/counter") {
        window.location.assign(href);
        return;
      }
      page = new DOMParser().parseFromString(await response.text(), "text/html");
    } catch {
      counter.noLine(href);
      return;
    }
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
    const box = words.content.cloneNode(true).firstElementChild;
    box.querySelector("[data-asked]").textContent = new URL(href, window.location.origin).searchParams.get("code") ?? "";
    document.querySelectorAll("main > :not([data-told]):not(template)").forEach((part) => { part.hidden = true; });
    document.querySelector("[data-told]").replaceChildren(box);
    counter.play("hold");
    counter.field().focus({ preventScroll: true });
  },

  // What is on the screen now: its sound, and what this device can do besides.
  shown() {
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
counter.shown();
