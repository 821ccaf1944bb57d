// A deed on a page: one form, one call of the API, with an id that this device makes before it is sent.
// A second press of the same button sends the same deed, and the record takes it once. What was done is
// told by the page that comes then, with its undo; what was refused is told here, in the service's words; where nobody
// answers, the deed waits on this device (waiting.js).
"use strict";

const deeds = {
  id() {
    return waiting.id();
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
      return exact(deeds.product(form, field.dataset.product, Number(field.dataset.left)));
    }
    if (field.dataset.as === "figure") {
      return exact(deeds.figure(field.value));
    }
    if (field.dataset.as === "truth") {
      return field.value === "true";
    }
    if (field.dataset.as === "weight") {
      return exact(weights.grams(field));
    }
    if (field.dataset.as === "moment") {
      return `${field.value}:00${form.dataset.offset}`;
    }
    if (field.dataset.as === "when") {
      return bench.moment(form, field);
    }
    return field.dataset.as === "packs" ? deeds.packs(field.value) : field.value.trim();
  },

  // One field times another: so many packs of a weight. What equals all that there is, as far as it was typed, is all of it.
  product(form, names, left) {
    const [each, many] = names.split(" ").map((name) => Array.from(form.elements).filter((field) => field.name === name).find((field) => field.type !== "radio" || field.checked));
    const times = deeds.figure(many?.value ?? "");
    const { grams, step } = weights.typed(each);
    return weights.all(grams * times, step, left, times);
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
    const { status, answer } = await waiting.post(path, asked);
    if (status === 0) {
      return { away: true };
    }
    return status < 300 ? { done: answer } : { refused: answer };
  },

  // The forms whose press is a deed, or several.
  forms: "form[data-deed], form[data-batch], form[data-sells], form[data-undo], form[data-notes]",

  // The calls of a form, in their order: one, one a lot, one a pack that is sold, one a field that says something, or the voids of what was done, the
  // newest first.
  asked(form) {
    const { deed, batch: many, sells, undo, why, notes } = form.dataset;
    if (many) {
      return batch.asked(form);
    }
    if (notes) {
      const said = Array.from(form.elements).filter((field) => field.name && field.value.trim() !== "");
      return said.map((field) => [notes, { kind: field.name, text: field.value.trim() }]);
    }
    if (sells) {
      return JSON.parse(sells).map((body) => ["/api/departures", body]);
    }
    if (undo) {
      return undo.split(" ").reverse().map((id) => [`/api/steps/${id}/void`, { why }]);
    }
    return [[deed, deeds.body(form)]];
  },

  // Its deed, with what is told beside it; `next.act` is what is done with what it made instead of labels.
  async send(form, also = {}, next = {}) {
    if (form.dataset.busy) {
      return;
    }
    const asked = deeds.asked(form).map(([path, body]) => [path, { ...body, ...also }]);
    if (asked.length === 0) {
      form.querySelector("[data-nothing]").hidden = false;
      return;
    }
    // Other wishes are another deed.
    const wish = JSON.stringify(asked);
    if (form.dataset.wish !== wish) {
      form.dataset.wish = wish;
      form.dataset.ids = asked.map(() => deeds.id()).join(" ");
    }
    const ids = form.dataset.ids.split(" ");
    const calls = asked.map(([path, body], nth) => ({ path, id: ids[nth], body, tried: false }));
    form.dataset.busy = "yes";
    const { done, refused } = await deeds.all(calls);
    if (!refused && done.length < calls.length) {
      await deeds.wait(form, calls.slice(done.length));
      delete form.dataset.busy;
      return;
    }
    delete form.dataset.busy;
    if (refused) {
      deeds.tell(form, refused);
      return;
    }
    const labels = next.act ? {} : await deeds.print(form, done[0]);
    const warnings = done.flatMap((one) => one.warnings || []).concat(labels.refused?.detail ?? []);
    sessionStorage.setItem("warnings", JSON.stringify(warnings));
    // What was made is looked at next, where the form says so.
    const lots = done[0].lots;
    const made = form.dataset.toMade !== undefined && lots && lots.length > 0;
    const then = new URL(made ? `/lots/${lots[0].code}${next.act ? `/${next.act}` : ""}` : form.dataset.then, window.location.origin);
    then.searchParams.set("did", form.dataset.undo ? form.dataset.undo.replaceAll(" ", ",") : done.map((one) => one.id).join(","));
    // A page that shows it by itself says so.
    const told = new CustomEvent("deed-done", { cancelable: true, detail: then.href });
    if (document.dispatchEvent(told)) {
      window.location.assign(then.href);
    }
  },

  // One call after the other, behind what waits on this device already. What is not among the done ones was refused, or
  // nobody answered.
  async all(calls) {
    const done = [];
    if (window.indexedDB && (await waiting.flush()) === "away") {
      return { done };
    }
    for (const call of calls) {
      call.tried = true;
      const { done: answer, refused } = await deeds.post(call.path, { id: call.id, ...call.body });
      if (!answer) {
        return { done, refused };
      }
      done.push(answer);
    }
    return { done };
  },

  // Nobody answers: the deeds wait on this device, and the page says so where the form was.
  async wait(form, calls) {
    const printer = deeds.chosen(form, "_printer");
    const press = {
      says: deeds.told(form),
      by: document.querySelector("[data-who]")?.dataset.who ?? "",
      makes: calls.some((call) => ["/api/steps", "/api/receipts", "/api/adoptions"].includes(call.path)),
      undo: form.dataset.why ?? document.querySelector("template[data-kept]")?.dataset.why,
      ...(printer ? { printer, print: deeds.id() } : {}),
    };
    const kept = await (window.indexedDB ? waiting.keep(press, calls) : Promise.reject(new Error("no store"))).catch(() => null);
    const words = document.querySelector("template[data-kept]");
    if (!kept || !words) {
      deeds.tell(form);
      return;
    }
    const box = words.content.cloneNode(true).firstElementChild;
    box.querySelector("[data-slip]").textContent = kept.slip;
    box.querySelector("[data-what]").textContent = press.says;
    box.querySelector("[data-makes]").hidden = !press.makes;
    box.querySelector("[data-makes-none]").hidden = press.makes;
    box.querySelectorAll("[data-makes]").forEach((text) => { text.textContent = text.textContent.replace("[slip]", kept.slip); });
    box.querySelector("[data-take-out]").addEventListener("click", async () => {
      if (await waiting.takeOut(kept.press, press.undo)) {
        deeds.anew(form);
        deeds.show(form, document.querySelector("template[data-taken-out]").content.cloneNode(true).firstElementChild);
      }
    });
    waiting.follow(kept.press, (rows) => deeds.came(box, rows));
    box.querySelector("[data-once-more]").addEventListener("click", () => {
      // A page on which the same again would be wrong goes its own way.
      if (!document.dispatchEvent(new CustomEvent("once-more", { cancelable: true, detail: form }))) {
        return;
      }
      form.reset?.();
      deeds.anew(form);
      document.querySelector("[data-told]").replaceChildren();
      deeds.sentence(form);
    });
    form.hidden = true;
    deeds.show(form, box);
    document.dispatchEvent(new CustomEvent("deed-waits", { detail: form }));
  },

  // What waited has gone through, or was refused: where its slip stands, that is said.
  came(box, rows) {
    const state = rows.every((row) => row.state === "done") ? "through" : "not-taken";
    const told = document.querySelector(`template[data-${state}]`).content.cloneNode(true).firstElementChild;
    told.querySelectorAll("[data-says]").forEach((part) => { part.textContent = part.dataset.says.replace("[slip]", rows[0].slip); });
    told.querySelector("[data-what]").textContent = rows[0].says;
    box.replaceWith(told);
  },

  // The form is for another deed from now on.
  anew(form) {
    form.hidden = false;
    delete form.dataset.wish;
    delete form.dataset.ids;
    document.dispatchEvent(new CustomEvent("deed-anew", { detail: form }));
  },

  // A form's deed in words: its sentence, else what stands beside its button.
  told(form) {
    const said = form.querySelector("[data-sentence]:not([hidden]):not([data-wants]), [data-deed-says]");
    if (said && said.textContent.trim() !== "") {
      return said.textContent.trim();
    }
    const about = form.closest("li")?.querySelector("strong") ?? document.querySelector(".what-was-done, main h1");
    return [about, form.querySelector("button")].map((text) => text?.innerText.trim()).filter(Boolean).join(waiting.colon());
  },

  // What was told is over.
  quiet() {
    document.querySelector("[data-told]")?.replaceChildren();
  },

  // Shows a box where the form is.
  show(form, box) {
    const told = document.querySelector("[data-told]");
    told.replaceChildren(box);
    (form.closest(".thumb, .done") ?? form).after(told);
    box.focus();
    box.scrollIntoView({ block: "center" });
  },

  // The labels of what was made come out of the chosen printer. A printer's trouble undoes no deed: the
  // queue and the page of printing tell of it. What it has no roll for is told beside what was done.
  async print(form, done) {
    const printer = deeds.chosen(form, "_printer");
    return printer ? deeds.post("/api/prints", { id: deeds.id(), printer, step: done.id }) : {};
  },

  // What a form is about to do, in a sentence that follows its fields.
  sentence(form) {
    form.querySelectorAll("[data-sentence]").forEach((shown) => deeds.say(form, shown));
    form.querySelectorAll("[data-most]").forEach((shown) => deeds.enough(form, shown));
  },

  // More is to be packed than there is, or all of it: said while it is typed.
  enough(form, shown) {
    const left = Number(shown.dataset.most);
    const asked = deeds.product(form, shown.dataset.of, left);
    shown.hidden = !(asked >= left);
    shown.classList.toggle("warn", asked > left);
    const says = asked > left ? shown.dataset.says : shown.dataset.all;
    shown.textContent = says.replace("[asked]", weights.told(asked)).replace("[left]", weights.told(left));
  },

  // One of its sentences; of several, that of the choice which it is for: "kind=turn".
  say(form, shown) {
    const [name, value] = (shown.dataset.for || "").split("=");
    shown.hidden = Boolean(name) && deeds.chosen(form, name) !== value;
    const wants = new Set();
    const said = shown.dataset.sentence.replace(/\[([a-z0-9_.]+)\]/g, (whole, name) => {
      const fields = Array.from(form.elements).filter((field) => field.name === name);
      const field = fields.find((one) => one.type !== "radio" || one.checked);
      const value = field ? deeds.shown(field).trim() : "";
      if (value !== "" && value !== "…") {
        return value;
      }
      const { empty, or, orSays } = (field ?? fields[0])?.dataset ?? {};
      if (empty === undefined && !(or && deeds.chosen(form, or).trim() !== "")) {
        wants.add(deeds.called(field ?? fields[0]));
      }
      return empty ?? orSays ?? "…";
    });
    // A deed that lacks something is none yet: what is still to be typed or chosen is said, as it is called beside its field.
    wants.delete("");
    shown.toggleAttribute("data-wants", wants.size > 0);
    deeds.write(shown, wants.size > 0 ? document.documentElement.dataset.wants.replace("[what]", [...wants].join(", ")) : said);
  },

  // What a field is called where it stands; what the page works out itself is called nothing.
  called(field) {
    if (!field || field.dataset.called || field.type === "hidden") {
      return field?.dataset.called ?? "";
    }
    const stands = (field.type === "radio" && field.closest("fieldset")?.querySelector("legend")) || field.labels[0];
    const text = Array.from(stands?.childNodes ?? []).find((part) => part.nodeType === 3 && part.textContent.trim() !== "");
    return (text?.textContent ?? "").split(",")[0].replace(/[\s\u00a0]*[?:]$/, "").trim();
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
      return Array.from(field.closest("label").childNodes).filter((part) => part.nodeType === 3).map((part) => part.textContent).join("");
    }
    if (field.type === "datetime-local" && field.value) {
      return waiting.hour(field.value, { weekday: "short" });
    }
    if (field.type === "date" && field.value) {
      const said = { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" };
      return new Date(`${field.value}T00:00:00Z`).toLocaleDateString(document.documentElement.dataset.days, said);
    }
    if (field.dataset.as === "weight" && weights.inPounds && field.dataset.unit !== "g" && weights.grams(field) > 0) {
      return weights.told(weights.grams(field));
    }
    const value = field.selectedOptions ? field.selectedOptions[0].textContent : field.value;
    return field.dataset.unit && /[0-9]\s*$/.test(value) ? `${value.trim()} ${field.dataset.unit}` : value;
  },
};

document.addEventListener("submit", (event) => {
  if (event.target.matches(deeds.forms)) {
    event.preventDefault();
    deeds.send(event.target);
  }
});

// A list that is chosen from tells of it by the one, by the other, or by both.
["input", "change"].forEach((sort) => document.addEventListener(sort, (event) => {
  const form = event.target.form;
  if (form && form.matches("form[data-deed]")) {
    deeds.sentence(form);
  }
}));

document.querySelectorAll("form[data-deed], form[data-batch]").forEach((form) => deeds.sentence(form));

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

// What waits on this device and draws on the same lot is not counted yet in what stands here.
document.addEventListener("waiting", ({ detail }) => {
  const told = document.querySelector("[data-waits-of]");
  const plain = (lot) => String(lot).split("/")[0].replaceAll("-", "");
  const named = (body) => [body.lot, ...(body.inputs ?? []).map((one) => one?.lot)].filter(Boolean).map(plain);
  const here = new Set(Array.from(document.querySelectorAll("form[data-deed]"), (form) => named(JSON.parse(form.dataset.body))).flat());
  const rows = detail.filter((row) => row.state === "waits" && named(row.body).some((lot) => here.has(lot)));
  if (told) {
    told.hidden = rows.length === 0;
    told.textContent = told.dataset.says.replace("[what]", rows.map((row) => `${row.slip}${waiting.colon()}${row.says}`).join(" "));
  }
});
