// A deed on a page: one form, one call of the API, with an id that this device makes before it is sent.
// A second press of the same button sends the same deed, and the record takes it once. What was done is
// told by the page that comes then, with its undo; what was refused is told here, in the service's words.
"use strict";

const deeds = {
  id() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
    return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
  },

  // A figure as people write it, in grams: 2,5 and 2.5 are the same.
  figure(text) {
    return Number(text.trim().replace(/[\s\u00a0\u202f]/g, "").replace(",", "."));
  },

  // Puts a value where its name says: "outputs.0.pack_count".
  put(body, name, value) {
    const parts = name.split(".");
    const last = parts.pop();
    let at = body;
    parts.forEach((part, nth) => {
      at[part] ??= /^\d+$/.test(parts[nth + 1] ?? last) ? [] : {};
      at = at[part];
    });
    at[last] = value;
  },

  // What a form asks for.
  body(form) {
    const body = JSON.parse(form.dataset.body);
    for (const field of form.elements) {
      if (field.name.startsWith("_")) {
        continue;
      }
      const off = (field.type === "radio" || field.type === "checkbox") && !field.checked;
      if (!field.name || field.disabled || off || field.value.trim() === "") {
        continue;
      }
      if (field.dataset.with && deeds.chosen(form, field.dataset.with).trim() === "") {
        continue;
      }
      deeds.put(body, field.name, deeds.value(form, field));
    }
    return deeds.whole(form, body);
  },

  // Rows of a list that lack what makes them one go; what was not ticked is none: "inputs:lot log:at".
  whole(form, body) {
    for (const need of (form.dataset.needs || "").split(" ").filter(Boolean)) {
      const [list, field] = need.split(":");
      const rows = (body[list] || []).filter((row) => row && row[field] !== undefined);
      if (rows.length > 0) {
        body[list] = rows;
      } else {
        delete body[list];
      }
    }
    return body;
  },

  // What a field says: a figure, pack numbers, a product of two other fields, or a text.
  value(form, field) {
    const exact = (figure) => Math.round(figure * 1000) / 1000;
    if (field.dataset.product) {
      const [one, other] = field.dataset.product.split(" ").map((name) => deeds.figure(deeds.chosen(form, name)));
      return exact(one * other);
    }
    if (field.dataset.as === "figure") {
      return exact(deeds.figure(field.value));
    }
    if (field.dataset.as === "weight") {
      return exact(bench.grams(field));
    }
    if (field.dataset.as === "when") {
      return bench.moment(form, field);
    }
    return field.dataset.as === "packs" ? deeds.packs(field.value) : field.value.trim();
  },

  // What is typed or chosen under a name.
  chosen(form, name) {
    const fields = Array.from(form.elements).filter((field) => field.name === name);
    const field = fields.find((one) => one.type !== "radio" || one.checked);
    return field ? field.value : "";
  },

  // Numbers as people write them: 1-4, 7.
  packs(text) {
    const numbers = [];
    for (const part of text.split(/[\s,]+/).filter(Boolean)) {
      const [from, to] = part.split(/[-–]/).map(Number);
      // No lot has more packs than that; whoever types more is told so by the service.
      for (let number = from; number <= Math.min(to ?? from, from + 9999); number += 1) {
        numbers.push(number);
      }
    }
    return numbers;
  },

  async post(path, asked) {
    try {
      const response = await fetch(path, {
        method: "POST",
        headers: { "Content-Type": "application/json", "Accept-Language": document.documentElement.lang },
        body: JSON.stringify(asked),
      });
      const answer = await response.json();
      return response.ok ? { done: answer } : { refused: answer };
    } catch {
      return { away: true };
    }
  },

  // Tells what was refused, or that nobody answers, where the form is.
  tell(form, problem) {
    form.querySelectorAll("[aria-invalid]").forEach((field) => field.removeAttribute("aria-invalid"));
    const told = document.querySelector("[data-told]");
    const name = problem ? "[data-refused]" : "[data-away]";
    const copy = document.querySelector(`template${name}`).content.cloneNode(true);
    told.replaceChildren(copy);
    const box = told.firstElementChild;
    if (problem) {
      box.querySelector("[data-title]").textContent = problem.title + ".";
      box.querySelector("[data-detail]").textContent = problem.detail;
      const field = problem.field && form.elements && deeds.field(form, problem.field);
      if (field) {
        field.setAttribute("aria-invalid", "true");
      }
      if (problem.may_be_told && form.dataset.deed) {
        deeds.offer(form, box);
      }
    }
    form.after(told);
    box.focus();
    box.scrollIntoView({ block: "center" });
  },

  // The field of the form that a problem names: "outputs[0].grams" is outputs.0.grams here.
  field(form, name) {
    const wanted = name.replace(/\[(\d+)\]/g, ".$1");
    const fields = Array.from(form.elements).filter((field) => field.name);
    return fields.find((field) => field.name === wanted && field.type !== "radio");
  },

  // A limit stands in the way: was it typed right? Else it is recorded as it happened, with a note.
  offer(form, box) {
    const part = box.querySelector("[data-happened]");
    part.hidden = false;
    part.querySelector("[data-as-it-happened]").addEventListener("click", () => {
      const note = part.querySelector("[data-note]");
      if (note.value.trim() === "") {
        note.setAttribute("aria-invalid", "true");
        note.focus();
        return;
      }
      deeds.send(form, { as_it_happened: true, note: note.value.trim() });
    });
  },

  async send(form, also = {}) {
    const asked = { ...deeds.body(form), ...also };
    // Other wishes are another deed.
    const wish = JSON.stringify(asked);
    if (form.dataset.wish !== wish) {
      form.dataset.wish = wish;
      form.dataset.id = deeds.id();
    }
    if (form.dataset.busy) {
      return;
    }
    form.dataset.busy = "yes";
    const { done, refused, away } = await deeds.post(form.dataset.deed, { id: form.dataset.id, ...asked });
    delete form.dataset.busy;
    if (refused || away) {
      deeds.tell(form, refused);
      return;
    }
    sessionStorage.setItem("warnings", JSON.stringify(done.warnings || []));
    await deeds.print(form, done);
    // What was made is looked at next, where the form says so.
    const made = form.dataset.toMade !== undefined && done.lots && done.lots.length > 0;
    const then = new URL(made ? `/lots/${done.lots[0].code}` : form.dataset.then, window.location.origin);
    const shown = form.dataset.deed.endsWith("/void") ? form.dataset.deed.split("/").at(-2) : done.id;
    then.searchParams.set("did", shown);
    // A page that shows it by itself says so.
    const told = new CustomEvent("deed-done", { cancelable: true, detail: then.href });
    if (document.dispatchEvent(told)) {
      window.location.assign(then.href);
    }
  },

  // The labels of what was made come out of the chosen printer. A printer's trouble undoes no deed: the
  // queue and the page of printing tell of it.
  async print(form, done) {
    const printer = deeds.chosen(form, "_printer");
    if (printer) {
      await deeds.post("/api/prints", { id: deeds.id(), printer, step: done.id });
    }
  },

  // What a form is about to do, in a sentence that follows its fields.
  sentence(form) {
    form.querySelectorAll("[data-sentence]").forEach((shown) => deeds.say(form, shown));
  },

  // One of its sentences; of several, that of the choice which it is for: "kind=turn".
  say(form, shown) {
    const [name, value] = (shown.dataset.for || "").split("=");
    shown.hidden = Boolean(name) && deeds.chosen(form, name) !== value;
    const said = shown.dataset.sentence.replace(/\[([a-z0-9_.]+)\]/g, (whole, name) => {
      const fields = Array.from(form.elements).filter((field) => field.name === name);
      const field = fields.find((one) => one.type !== "radio" || one.checked);
      const value = field && deeds.shown(field);
      return value && value.trim() !== "" ? value.trim() : "…";
    });
    // What is still to be chosen at the end needs no full stop.
    deeds.write(shown, said.replace(/…\.$/, "…"));
  },

  // Writes a text; each code in it stays on one line.
  write(element, text) {
    const parts = text.split(/([0-9A-Z]{3}-\d{5}-[0-9A-Z]{3}-[0-9A-Z])/);
    element.replaceChildren(...parts.map((part, nth) => {
      if (nth % 2 === 0) {
        return part;
      }
      const code = document.createElement("b");
      code.className = "nb";
      code.textContent = part;
      return code;
    }));
  },

  // What a field says to the eye.
  shown(field) {
    if (field.type === "radio") {
      return field.closest("label").textContent;
    }
    const value = field.selectedOptions ? field.selectedOptions[0].textContent : field.value;
    return field.dataset.unit && /[0-9]\s*$/.test(value) ? `${value.trim()} ${field.dataset.unit}` : value;
  },
};

document.addEventListener("submit", (event) => {
  if (event.target.matches("form[data-deed]")) {
    event.preventDefault();
    deeds.send(event.target);
  }
});

document.addEventListener("input", (event) => {
  const form = event.target.form;
  if (form && form.matches("form[data-deed]")) {
    deeds.sentence(form);
  }
});

document.querySelectorAll("form[data-deed]").forEach((form) => deeds.sentence(form));

// Nothing was wrong with what was just done, but look.
const warnings = JSON.parse(sessionStorage.getItem("warnings") || "[]");
sessionStorage.removeItem("warnings");
const told = document.querySelector("[data-told]");
if (told && warnings.length > 0) {
  const box = document.createElement("div");
  box.className = "warn";
  for (const warning of warnings) {
    const line = document.createElement("p");
    deeds.write(line, warning);
    box.append(line);
  }
  told.append(box);
}

// Everything of the page as one sheet of paper.
document.querySelectorAll("[data-sheet]").forEach((button) => {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
});
