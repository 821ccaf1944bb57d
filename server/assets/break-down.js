// A carcass on the bench. Each weight is kept on this device, by lot, until all of it is one deed; so whoever
// comes back, or takes over, goes on where it was left. Weights are whole milligrams. No text stands here:
// what is said comes from the page, with the names of figures in brackets.
"use strict";

const side = {
  page: document.querySelector("[data-side]"),
  // What was kept, the oldest first; the product that each cut is; what was sent and not answered yet.
  state: { kept: [], as: {} },
  cuts: [],
  cut: null,
  // By how much the kitchen's clock is ahead of this device's.
  ahead: 0,
  // An odd weight is kept by a second word only.
  odd: false,

  part(name) {
    return side.page.querySelector(`[data-${name}]`);
  },

  // A sentence of the page, with its figures.
  say(name, values = {}) {
    const text = side.page.querySelector(`template[data-say="${name}"]`).content.textContent;
    return text.replace(/\[([a-z-]+)\]/g, (whole, key) => values[key] ?? whole);
  },

  show(element, text) {
    element.hidden = text === "";
    element.textContent = text;
  },

  // ---- how much

  all() {
    return Number(side.page.dataset.all);
  },

  off() {
    return side.state.kept.reduce((sum, one) => sum + one.mg, 0);
  },

  of(key) {
    return side.state.kept.filter((one) => one.cut === key).reduce((sum, one) => sum + one.mg, 0);
  },

  // ---- what is kept on the device

  key() {
    return `break-down:${side.page.dataset.lot}/${side.page.dataset.pack}`;
  },

  load() {
    try {
      const kept = JSON.parse(localStorage.getItem(side.key()));
      side.state = kept && Array.isArray(kept.kept) ? kept : side.state;
    } catch {
      // Nothing that can be read is kept.
    }
  },

  save() {
    try {
      if (side.state.kept.length === 0) {
        localStorage.removeItem(side.key());
      } else {
        localStorage.setItem(side.key(), JSON.stringify(side.state));
      }
    } catch {
      side.show(side.part("begun"), side.say("no-store"));
    }
  },

  // Was what was sent recorded, though nobody told us? Then it is done; undone, its weights are here again.
  // False where nobody answers.
  async settle() {
    const sent = side.state.sent;
    if (!sent) {
      return true;
    }
    try {
      const response = await fetch(`/api/steps/${sent.id}`);
      const step = response.ok ? await response.json() : null;
      if (step && !step.voided) {
        // What was weighed since it was sent is no part of it.
        side.state.kept = side.state.kept.filter((one) => sent.kept && !sent.kept.includes(one.at));
      }
      if (step) {
        delete side.state.sent;
      }
      side.save();
      return true;
    } catch {
      // The same id is sent again, and the record takes it once.
      return false;
    }
  },

  // ---- the cut in hand

  choose(cut) {
    side.cut = cut;
    const field = side.part("weight");
    field.value = "";
    field.removeAttribute("aria-invalid");
    side.part("other") && (side.part("other").value = cut && cut.other ? cut.key : "");
    side.part("scale").hidden = !cut;
    side.part("acts").hidden = !cut;
    if (cut) {
      side.part("cut-name").textContent = cut.says;
      side.show(side.part("cut-from"), cut.from);
      const choice = side.part("product");
      choice.replaceChildren(...cut.products.map((one) => one.cloneNode(true)));
      choice.value = side.state.as[cut.key] ?? choice.options[0].value;
      side.part("cut-as").hidden = choice.options.length < 2;
      side.part("weigh-says").textContent = side.say("weight", { cut: cut.says, unit: side.page.dataset.unit });
    }
    side.judge(false);
    side.render();
    if (cut) {
      field.focus({ preventScroll: true });
    }
  },

  // The next cut in the order of the knife that nobody weighed yet.
  next() {
    const open = (cut) => !cut.before && side.of(cut.key) === 0;
    const after = side.cut ? side.cuts.indexOf(side.cut) + 1 : 0;
    return side.cuts.slice(after).find(open) ?? side.cuts.find(open) ?? null;
  },

  // What is on the scale against what is usual: `told` when it was typed to its end.
  judge(told) {
    const cut = side.cut;
    const mg = cut ? scale.read(side.part("weight").value) : 0;
    const whole = cut ? side.of(cut.key) + mg : 0;
    let says = "";
    if (mg > 0 && mg > side.all() - side.off() + side.all() * 0.005) {
      says = "too-much";
    } else if (mg > 0 && cut.low && whole < cut.low) {
      says = "light";
    } else if (mg > 0 && cut.high && whole > cut.high) {
      says = "heavy";
    }
    side.odd = told && says !== "";
    const values = cut && {
      cut: cut.name,
      weight: scale.weight(mg),
      left: scale.weight(side.all() - side.off()),
      low: scale.weight(cut.low, 2),
      high: scale.weight(cut.high, 2),
    };
    side.show(side.part("odd"), side.odd ? side.say(says, values) : "");
    scale.needle(whole, mg);
    side.bar(mg);
    side.acts(mg, says);
    return { mg, says };
  },

  acts(mg, says) {
    const keep = side.part("keep");
    const odd = side.odd && says !== "";
    side.part("again").hidden = !odd;
    side.part("again").classList.toggle("first", odd);
    keep.classList.toggle("first", !odd);
    keep.hidden = odd && says === "too-much";
    side.part("another").hidden = keep.hidden || mg === 0;
    const name = mg === 0 ? "keep-nothing" : odd ? "keep-odd" : "keep";
    side.part("keep-says").textContent = side.say(name, { weight: scale.weight(mg) });
    side.part("keep-what").textContent = side.cut ? side.part("product").selectedOptions[0].textContent : "";
  },

  keep(another) {
    const cut = side.cut;
    const field = side.part("weight");
    const was = side.odd;
    const { mg, says } = side.judge(true);
    if (mg <= 0) {
      field.setAttribute("aria-invalid", "true");
      side.show(side.part("odd"), side.say("no-weight", { cut: cut.name, unit: side.page.dataset.unit }));
      field.focus();
      return;
    }
    // One of several pieces is lighter than all of them.
    const odd = says !== "" && !(another && says === "light");
    if (says === "too-much" || (odd && !was)) {
      side.part("again").focus();
      return;
    }
    const { value, selectedOptions } = side.part("product");
    side.state.as[cut.key] = value;
    side.state.kept.push({
      cut: cut.key, says: cut.name, product: value, named: selectedOptions[0].textContent,
      mg, odd, at: Date.now(), by: side.page.dataset.by,
    });
    side.save();
    side.choose(another ? cut : side.next());
    if (!side.cut) {
      side.part("record").scrollIntoView({ block: "nearest" });
      side.part("record").querySelector("button.grand").focus({ preventScroll: true });
    }
  },

  undo() {
    const last = side.state.kept.pop();
    side.save();
    side.choose(last ? side.cutOf(last.cut) : side.next());
  },

  // A cut by its key; what is beside the style, by its product.
  cutOf(key) {
    return side.cuts.find((cut) => cut.key === key) ?? side.other(key);
  },

  other(code) {
    const choice = side.part("other");
    const option = choice && Array.from(choice.options).find((one) => one.value === code);
    if (!option) {
      return null;
    }
    return { key: code, name: option.textContent, says: option.textContent, from: "", source: "", other: true, products: [option] };
  },

  // ---- what is shown

  bar(mg) {
    const share = (part) => `${Math.max(0, Math.min(100, (part / side.all()) * 100))}%`;
    const left = side.all() - side.off();
    const values = {
      off: scale.weight(side.off()), now: scale.weight(mg), left: scale.weight(left), all: scale.weight(side.all()),
    };
    for (const [name, part] of [["off", side.off()], ["now", Math.min(mg, Math.max(left, 0))]]) {
      const stripe = side.part("bar").querySelector(`[data-${name}]`);
      stripe.hidden = part <= 0;
      stripe.style.width = share(part);
    }
    side.part("bar").setAttribute("aria-label", side.say("bar", values));
    side.part("off-says").textContent = side.say("off", values);
    side.part("left-says").textContent = side.say("left", { ...values, left: scale.figure(left) });
  },

  render() {
    for (const cut of side.cuts) {
      const mg = side.of(cut.key);
      const is = { off: mg > 0 || cut.before, now: cut === side.cut };
      const marked = [cut.button, ...side.page.querySelectorAll(`.side [data-of="${cut.key}"]`)];
      for (const element of marked) {
        element.classList.toggle("off", is.off);
        element.classList.toggle("now", is.now);
      }
      cut.button.setAttribute("aria-pressed", String(is.now));
      if (!cut.before || mg > 0) {
        cut.button.querySelector("[data-kg]").textContent = mg > 0 ? `✓ ${scale.weight(mg)}` : "";
      }
      const shown = side.page.querySelector(`.side [data-of="${cut.key}"] .kg`);
      if (shown) {
        shown.textContent = mg > 0 ? scale.figure(mg) : "";
      }
    }
    if (side.cut) {
      const kept = side.of(side.cut.key);
      side.show(side.part("cut-more"), kept > 0 ? side.say("more", { kept: scale.weight(kept) }) : "");
      scale.draw(side.cut);
    }
    const last = side.state.kept.at(-1);
    side.part("last").hidden = !last;
    side.part("last-says").textContent = last ? side.say("kept", side.told(last)) : "";
    end.render();
  },

  // A weight that was kept, in words.
  told(one) {
    const at = waiting.hour(one.at + side.ahead, { timeZone: side.page.dataset.zone });
    return { cut: one.says, weight: scale.weight(one.mg), time: at, by: one.by };
  },

};

const begin = async () => {
  // A page that this device kept tells the moment at which it was kept.
  const kept = Date.parse(document.querySelector("[data-stale]").dataset.stale);
  side.ahead = Number(side.page.dataset.now) - (kept || Date.now());
  side.cuts = Array.from(side.page.querySelectorAll("button[data-cut]")).map((button) => {
    const { cut, nth, name, full, from, source, usual, low, high, before } = button.dataset;
    const products = Array.from(button.parentElement.querySelector("template").content.children);
    return {
      button, key: cut, name, says: `${nth} ${name}`, full, from, source, products, before: before !== undefined,
      usual: Number(usual), low: Number(low ?? 0), high: Number(high ?? 0),
    };
  });
  side.load();
  await side.settle();
  const [first] = side.state.kept;
  if (first) {
    side.show(side.part("begun"), side.say("begun", { ...side.told(first), off: scale.weight(side.off()) }));
  }
  side.choose(side.next());
};

if (side.page) {
  side.page.addEventListener("click", (event) => {
    const on = (name) => event.target.closest(`[data-${name}]`);
    const cut = on("cut") ?? event.target.closest(".side .cut");
    if (cut) {
      const chosen = side.cutOf(cut.dataset.cut ?? cut.dataset.of);
      chosen && side.choose(chosen);
    } else if (on("keep-it") || on("leave-out")) {
      end.settled(Boolean(on("keep-it")));
    } else if (on("keep")) {
      side.keep(false);
    } else if (on("another")) {
      side.keep(true);
    } else if (on("undo")) {
      side.undo();
    } else if (on("again")) {
      side.choose(side.cut);
    }
  });
  // Return ends a weight and keeps it; what is odd is told first.
  side.part("scale").addEventListener("submit", (event) => {
    event.preventDefault();
    const { mg, says } = side.judge(true);
    if (mg <= 0) {
      side.keep(false);
    } else {
      // What a scale wrote around the figure goes, if the figure says the same.
      const figure = scale.figure(mg);
      if (scale.read(figure) === mg) {
        side.part("weight").value = figure;
      }
      if (says === "") {
        side.keep(false);
      } else {
        side.part("again").focus();
      }
    }
  });
  side.part("weight").addEventListener("input", (event) => {
    event.target.removeAttribute("aria-invalid");
    end.part("unkept").hidden = true;
    side.judge(false);
  });
  side.part("product").addEventListener("change", () => side.judge(side.odd));
  side.part("other")?.addEventListener("change", (event) => {
    const cut = side.other(event.target.value);
    side.choose(cut ?? side.next());
  });
  end.form.addEventListener("change", () => end.render());
  // A scale types figures: wherever the finger was last, they land in the weight.
  document.addEventListener("keydown", (event) => {
    const typed = /^[0-9.,]$/.test(event.key) && !event.ctrlKey && !event.altKey && !event.metaKey;
    const at = document.activeElement.tagName;
    if (typed && side.cut && !["INPUT", "SELECT", "TEXTAREA"].includes(at)) {
      event.stopImmediatePropagation();
      side.part("weight").value = "";
      side.part("weight").focus();
    }
  }, true);
  // Somebody weighs the same carcass in another window of this device.
  window.addEventListener("storage", (event) => {
    if (event.key === side.key()) {
      side.state = { kept: [], as: {} };
      side.load();
      side.render();
      side.judge(side.odd);
    }
  });
  begin();
}
