// What was refused, told where the form is: what is wrong in large type, the way back to the field first, and the rest
// folded away. No text stands here.
"use strict";

const refused = {
  // How many sentences are read at a glance.
  glance: 2,

  // A text as what is read at once, and the rest.
  parts(text) {
    const sentences = text.split(/(?<=[.!?…])\s+(?=[\p{Lu}“«])/u);
    return [sentences.slice(0, refused.glance), sentences.slice(refused.glance)].map((some) => some.join(" "));
  },

  fill(form, box, problem) {
    const [first, rest] = refused.parts(problem.detail ?? "");
    box.querySelector("[data-title]").textContent = problem.title + ".";
    box.querySelector("[data-detail]").textContent = first;
    box.querySelector("[data-more]").hidden = rest === "";
    box.querySelector("[data-rest]").textContent = rest;
    refused.first(box, problem.in_the_way ?? []);
    const field = problem.field && form.elements && refused.field(form, problem.field);
    if (field) {
      field.setAttribute("aria-invalid", "true");
      refused.unfold(field);
      const correct = box.querySelector("[data-correct]");
      correct.hidden = false;
      // Where it may have happened so, typed wrong is no likelier than that: the two stand equal.
      correct.classList.toggle("first", !problem.may_be_told);
      correct.addEventListener("click", () => refused.go(field));
      refused.meat(form, box, field);
    }
    if (problem.may_be_told && form.matches?.(deeds.forms)) {
      refused.offer(form, box);
      if (field && form.dataset.sentBack && field.name.startsWith("readings.")) {
        refused.back(form, box, field);
      }
    }
  },

  // What is wrong is never folded away.
  unfold(field) {
    for (let part = field.closest("details"); part; part = part.parentElement.closest("details")) {
      part.open = true;
    }
    // What the code of a carton says is known only now: it is curing salt.
    const salt = field.closest("[data-if-salt]");
    if (salt) {
      salt.dataset.asked = "";
      salt.hidden = false;
      salt.querySelectorAll("input").forEach((one) => { one.disabled = false; });
    }
  },

  go(field) {
    refused.unfold(field);
    field.scrollIntoView({ block: "center" });
    field.focus();
    field.select?.();
  },

  // Too much curing salt is as well too little meat: whoever typed it knows which, and both stand there with their figures.
  meat(form, box, field) {
    if (!field.closest("[data-role=curing-salt]")) {
      return;
    }
    const sum = (parts) => Array.from(parts).flatMap((part) => pot.rows(part)).filter(({ tick }) => tick.checked).reduce((all, row) => all + (pot.grams(row) || 0), 0);
    const meat = form.querySelectorAll("[data-role=meat]");
    const row = Array.from(meat).flatMap((part) => pot.rows(part)).find(({ tick }) => tick.checked);
    if (!row) {
      return;
    }
    const [correct, button] = [box.querySelector("[data-correct]"), box.querySelector("[data-meat]")];
    correct.textContent = correct.dataset.salt.replace("[salt]", weights.small(sum(form.querySelectorAll("[data-role=curing-salt]"))));
    button.textContent = button.dataset.says.replace("[meat]", weights.told(sum(meat)));
    button.hidden = false;
    button.addEventListener("click", () => refused.go(row.field));
  },

  // What came in too warm goes back: it is taken as it came, so that the record has it, and leads to its way back.
  back(form, box, field) {
    const button = box.querySelector("[data-send-back]");
    const read = deeds.shown(field);
    button.textContent = button.dataset.says.replace("[read]", read);
    button.hidden = false;
    button.addEventListener("click", () => {
      const note = form.dataset.sentBack.replace("[read]", read);
      deeds.send(form, { as_it_happened: true, note }, { act: "return?why=page-why-too-warm" });
    });
  },

  // Later deeds stand in the way of an undo: each has its own page, with its own undo.
  first(box, deeds) {
    const part = box.querySelector("[data-in-the-way]");
    part.hidden = deeds.length === 0;
    part.querySelector(".acts").replaceChildren(...deeds.map((deed) => {
      const link = document.createElement("a");
      const there = new URL(window.location.href);
      there.searchParams.set("did", deed.id);
      link.href = there.href;
      link.className = "act";
      link.textContent = deed.says;
      return link;
    }));
  },

  // The field of the form that a problem names: "outputs[0].grams" is outputs.0.grams here, and of a list of which only
  // some rows were sent, the row that was sent as that one. Of a list as a whole it is what was typed last into it; of a
  // cure, the curing salt.
  field(form, name) {
    const fields = Array.from(form.elements).filter((field) => field.name && field.type !== "hidden");
    const typed = fields.filter((field) => !["radio", "checkbox"].includes(field.type) && field.value.trim() !== "");
    const [, list, nth, rest] = name.match(/^(\w+)\[(\d+)\]\.?(.*)$/) ?? [];
    if (list && (form.dataset.needs ?? "").split(" ").some((need) => need.startsWith(`${list}:`))) {
      const rows = [...new Set(typed.filter((field) => field.name.startsWith(`${list}.`)).map((field) => field.name.split(".")[1]))];
      return typed.find((field) => field.name === `${list}.${rows[Number(nth)]}.${rest || "grams"}`);
    }
    const wanted = name.replace(/\[(\d+)\]/g, ".$1");
    const within = typed.filter((field) => field.name.startsWith(`${wanted}.`));
    return fields.find((field) => field.name === wanted && field.type !== "radio")
      ?? within.find((field) => field.closest("[data-role=curing-salt]")) ?? within.at(-1)
      ?? fields.find((field) => field.closest("[data-if-salt]") && field.name.startsWith(`${wanted}.`));
  },

  // A limit stands in the way: it was typed wrong, or it is recorded as it happened, with a note.
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
};

// Tells what was refused, or that nobody answers, where the form is.
deeds.tell = (form, problem) => {
  form.querySelectorAll("[aria-invalid]").forEach((field) => field.removeAttribute("aria-invalid"));
  const name = problem ? "[data-refused]" : "[data-away]";
  const box = document.querySelector(`template${name}`).content.cloneNode(true).firstElementChild;
  if (problem) {
    refused.fill(form, box, problem);
  }
  deeds.show(form, box);
};
