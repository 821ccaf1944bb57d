// A scanner types and presses Enter: wherever the finger was last, the typing lands in the page's
// own field. The pages work without this, too: that field is then one tap or Tab away.
"use strict";

document.addEventListener("keydown", (event) => {
  const field = document.querySelector("main [data-scan]") ?? document.querySelector("[data-scan]");
  const typed = event.key.length === 1 && event.key !== " ";
  if (!field || !typed || event.ctrlKey || event.altKey || event.metaKey) {
    return;
  }
  if (!["INPUT", "SELECT", "TEXTAREA"].includes(document.activeElement.tagName)) {
    field.value = "";
    field.focus();
  }
});

// By what name what is typed on a page is kept on this device: the page with what it was asked for.
const draftOf = (address) => {
  const url = new URL(address, window.location.origin);
  url.searchParams.delete("did");
  url.searchParams.sort();
  return `draft:${url.pathname}?${url.searchParams}`;
};

// What a browser says of a field that is empty or cannot be read is said in the page's language, not in the browser's.
document.addEventListener("invalid", (event) => {
  const { validity, dataset } = event.target;
  const { missing, misread } = document.documentElement.dataset;
  const says = validity.valueMissing ? missing : validity.patternMismatch || validity.badInput ? misread : undefined;
  if (says && !validity.customError) {
    dataset.saidOwn = "";
    event.target.setCustomValidity(says);
  }
}, true);
["input", "change"].forEach((name) => document.addEventListener(name, (event) => {
  event.target.form?.querySelectorAll("[data-said-own]").forEach((field) => {
    delete field.dataset.saidOwn;
    field.setCustomValidity("");
  });
}, true));

// A field that is left may say something, and move what stands below it away from under the finger: a tap is of the
// button that was there when the finger came down.
const finger = { on: undefined, x: 0, y: 0, slips: 10 };
document.addEventListener("pointerdown", (event) => {
  finger.on = event.target.closest?.("button, a.act");
  finger.x = event.clientX;
  finger.y = event.clientY;
}, true);
document.addEventListener("click", (event) => {
  const { on, x, y, slips } = finger;
  finger.on = undefined;
  const moved = on?.isConnected && event.target !== on && event.target.contains(on);
  if (moved && Math.hypot(event.clientX - x, event.clientY - y) < slips) {
    event.preventDefault();
    event.stopPropagation();
    on.click();
  }
}, true);

// A choice is made by choosing: no second tap.
document.addEventListener("change", (event) => {
  if (event.target.matches("select[data-now]")) {
    event.target.form.submit();
  }
});

// A PIN is hidden while it is typed, and seen for as long as somebody wants to see it.
document.querySelectorAll("[data-reveals]").forEach((button) => {
  button.hidden = false;
  button.addEventListener("click", () => {
    const field = button.form.elements[button.dataset.reveals];
    const hidden = field.type === "password";
    field.type = hidden ? "text" : "password";
    button.setAttribute("aria-pressed", String(hidden));
    field.focus();
  });
});

// Everything of the page as one sheet of paper.
document.querySelectorAll("[data-sheet]").forEach((button) => {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
});

// Coming back to a page: the field is ready for the next scan.
window.addEventListener("pageshow", (event) => {
  const field = document.querySelector("[data-scan][autofocus]");
  if (event.persisted && field) {
    field.focus();
    field.select();
  }
});

// Printing. Each press is a deed with an id of its own, made before it is sent: a second press of the
// same button sends the same deed, and the record takes it once.
const printing = {
  id() {
    return waiting.id();
  },

  says(text) {
    const line = document.querySelector("[data-says]");
    line.textContent = text;
    line.hidden = text === "";
    if (text !== "") {
      line.scrollIntoView({ block: "center" });
    }
  },

  // Sends a deed; the answer, or nothing where it was refused, which is told.
  async send(path, asked) {
    printing.says("");
    try {
      const response = await fetch(path, {
        method: "POST",
        headers: { "Content-Type": "application/json", "Accept-Language": document.documentElement.lang },
        body: JSON.stringify(asked),
      });
      const answer = await response.json();
      if (response.ok) {
        return answer;
      }
      printing.says(answer.detail);
      return { refused: answer.type };
    } catch {
      printing.says(document.querySelector("[data-says]").dataset.away);
      return { refused: "away" };
    }
  },

  // The id of a button's deed, until that is done.
  deed(element) {
    element.dataset.deed ||= printing.id();
    return element.dataset.deed;
  },

  packs(text) {
    const numbers = [];
    for (const part of text.split(/[\s,]+/).filter(Boolean)) {
      const [from, to] = part.split("-").map(Number);
      // No lot has more packs than that; whoever types more is told so by the service.
      for (let number = from; number <= Math.min(to ?? from, from + 9999); number += 1) {
        numbers.push(number);
      }
    }
    return numbers;
  },

  async press(button, path, asked) {
    const done = await printing.send(path, { id: printing.deed(button), ...asked });
    if (!done.refused) {
      window.location.reload();
    } else if (done.refused !== "away") {
      delete button.dataset.deed;
    }
  },

  async print(form) {
    const { printer, packs, why } = form.elements;
    const numbers = printing.packs(packs.value);
    const asked = {
      printer: printer.value || undefined,
      lot: form.dataset.lot || null,
      step: form.dataset.step || null,
      packs: numbers.length > 0 ? numbers : null,
      together: form.elements.together?.checked ? true : undefined,
      again: why.value.trim() === "" ? null : { why: why.value.trim() },
    };
    // Other wishes are another deed.
    const wish = JSON.stringify(asked);
    if (form.dataset.wish !== wish) {
      form.dataset.wish = wish;
      delete form.dataset.deed;
    }
    const path = printer.value ? "/api/prints" : "/api/label-documents";
    const done = await printing.send(path, { id: printing.deed(form), ...asked });
    if (!done.refused) {
      // The page stays: a document that took its place would have no way back.
      window.location.assign(done.document ? `/printing?pdf=${done.id}` : "/printing");
    } else if (done.refused === "/problems/printed-before") {
      form.querySelector("[data-why]").hidden = false;
      why.focus();
    }
  },

  // Makes the certificate that was shown the printer's, in the version of its entry that is there now.
  async trust(button) {
    const path = `/api/printers/${encodeURIComponent(button.closest("[data-printer]").dataset.printer)}`;
    printing.says("");
    try {
      const read = await fetch(path);
      const entry = await read.json();
      const written = await fetch(path, {
        method: "PUT",
        headers: { "Content-Type": "application/json", "If-Match": read.headers.get("ETag") },
        body: JSON.stringify({ ...entry, certificate: button.dataset.trust }),
      });
      if (written.ok) {
        window.location.reload();
      } else {
        printing.says((await written.json()).detail);
      }
    } catch {
      printing.says(document.querySelector("[data-says]").dataset.away);
    }
  },

  // How each printer is just now.
  async look(section) {
    try {
      const response = await fetch(`/api/printers/${encodeURIComponent(section.dataset.printer)}/state`);
      const printer = await response.json();
      printing.paper(section, printer.paper ?? []);
      const trouble = section.querySelector("[data-trouble]");
      const setsUp = !section.querySelector("[data-state]");
      // Where it is set up, what refused its test label stands until another comes out.
      if (printer.trouble || !setsUp) {
        trouble.textContent = printer.trouble ?? "";
        trouble.hidden = !printer.trouble;
      }
      // The page of setting up asks for no more.
      if (setsUp) {
        return;
      }
      section.querySelector("[data-state]").textContent = printer.state ?? "";
      const lacks = section.querySelector("[data-lacks]");
      lacks.textContent = printer.lacks ?? "";
      lacks.hidden = !printer.lacks;
      const seen = printer.certificate?.seen;
      const trust = section.querySelector("[data-trust]");
      if (trust && seen && seen !== printer.certificate.pinned) {
        trust.dataset.trust = seen;
        trust.hidden = false;
      }
    } catch {
      section.querySelector("[data-state]")?.replaceChildren();
    }
  },

  // For which labels it has paper, line by line.
  paper(section, lines) {
    const shown = section.querySelector("[data-paper]");
    if (shown && lines.length > 0) {
      shown.replaceChildren(...lines.map((says) => Object.assign(document.createElement("li"), { textContent: says })));
      section.querySelector("[data-has]").hidden = false;
    }
  },
};

// Labels are on their way to a printer: what becomes of them is told where that stands, and nobody looks again.
const labels = {
  // Each look is a little later than the one before; after two minutes nobody stands there any more.
  async follow(told, wait = 1000) {
    if (told?.dataset.goesOn === undefined || wait > 12000) {
      return;
    }
    await new Promise((done) => { window.setTimeout(done, wait); });
    try {
      const page = await (await fetch(window.location.href)).text();
      const now = new DOMParser().parseFromString(page, "text/html").querySelector("[data-labels-told]");
      if (now) {
        told.replaceWith(now);
        labels.follow(now, wait * 1.2);
      }
    } catch {
      // Nobody answers: it stays as it was told.
    }
  },
};

// A label is shown as it will come out: which paper a printer has is asked once, by this device every few minutes at
// the most, and never waited for.
const preview = {
  rests: 5 * 60 * 1000,

  async look(shown) {
    if (!shown || Date.now() - Number(sessionStorage.getItem("asked-printer") ?? 0) < preview.rests) {
      return;
    }
    sessionStorage.setItem("asked-printer", Date.now());
    try {
      const printer = await (await fetch(`/api/printers/${encodeURIComponent(shown.dataset.asks)}/state`)).json();
      const drawn = printer.reachable && await fetch(shown.dataset.label);
      if (drawn?.ok) {
        const { documentElement } = new DOMParser().parseFromString(await drawn.text(), "image/svg+xml");
        shown.replaceChildren(document.importNode(documentElement, true));
      }
    } catch {
      // It stays as it is.
    }
  },
};

document.addEventListener("DOMContentLoaded", () => {
  preview.look(document.querySelector("[data-asks]"));
  labels.follow(document.querySelector("[data-labels-told]"));
  document.querySelectorAll("[data-printer]").forEach((section) => {
    printing.look(section);
    section.addEventListener("tried", () => printing.look(section));
  });
  if (!document.querySelector("[data-says]")) {
    return;
  }
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    const print = button?.closest("[data-settle]");
    if (print) {
      const seen = { print: Number(print.dataset.settle), came_out: button.dataset.cameOut === "true" };
      printing.press(button, "/api/print-settlements", { prints: [seen] });
    } else if (button?.dataset.trust) {
      printing.trust(button);
    } else if (button?.dataset.cancel) {
      printing.press(button, "/api/print-cancellations", { prints: button.dataset.cancel.split(",").map(Number) });
    }
  });
  document.querySelector("form[data-print]")?.addEventListener("submit", (event) => {
    event.preventDefault();
    printing.print(event.target);
  });
});
