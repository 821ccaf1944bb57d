// What is typed in a long form and not recorded yet is there again: after another page, another person, a tablet that
// started anew. It is kept on this device, by the page, for half a day, with the ids of what was pressed: whatever was
// taken before its answer was lost is not taken twice. No text stands here.
"use strict";

const drafts = {
  // So long what was typed is still about the same work.
  lasts: 12 * 3600 * 1000,
  over: false,

  key() {
    return draftOf(window.location.href);
  },

  fields(form) {
    return Array.from(form.elements).filter((field) => field.name && !field.matches("button, fieldset")
      && (field.type !== "hidden" || field.name === "readings.boiled_minutes"));
  },

  // A row is of its lot: where other lots stand in the form than did, nothing of it is meant any more.
  of(form) {
    return drafts.fields(form).map((field) => [field.name, field.matches("[type=checkbox], [type=radio]") ? field.value : ""]);
  },

  save(form) {
    if (drafts.over) {
      return;
    }
    const values = drafts.fields(form).map((field) => [field.value, field.checked === true, field.dataset.typed !== undefined, field.dataset.said !== undefined]);
    const { wish, ids } = form.dataset;
    const by = document.querySelector("[data-who]")?.dataset.who ?? "";
    const draft = { at: Date.now(), by, of: drafts.of(form), values, wish, ids };
    try {
      window.localStorage.setItem(drafts.key(), JSON.stringify(draft));
    } catch {
      // Where the device keeps nothing, the form is as it was before.
    }
  },

  read() {
    try {
      return JSON.parse(window.localStorage.getItem(drafts.key()));
    } catch {
      return null;
    }
  },

  drop() {
    try {
      window.localStorage.removeItem(drafts.key());
    } catch {
      // There is nothing then.
    }
  },

  // Puts back what was typed, and says whose it is.
  restore(form) {
    const draft = drafts.read();
    const is_meant = draft && Date.now() - draft.at < drafts.lasts && JSON.stringify(draft.of) === JSON.stringify(drafts.of(form));
    if (!is_meant) {
      drafts.drop();
      return;
    }
    drafts.fields(form).forEach((field, nth) => {
      const [value, checked, typed, said] = draft.values[nth];
      if (field.matches("[type=checkbox], [type=radio]")) {
        field.checked = checked;
      } else {
        field.value = value;
      }
      if (typed) {
        field.dataset.typed = "";
      }
      if (said) {
        field.dataset.said = "";
      }
      const row = field.closest("[data-reading]");
      if (row && value !== "") {
        row.hidden = false;
        row.closest("details")?.setAttribute("open", "");
      }
    });
    // What was put on a list since is chosen, whatever was before.
    Object.entries(draft.told ?? {}).forEach(([name, code]) => {
      const field = form.elements[name] ?? form.elements[`bought.${name}`];
      if (field) {
        field.value = code;
        field.dispatchEvent(new Event("change", { bubbles: true }));
      }
    });
    const boiled = form.querySelector("[data-boiled]");
    const pressed = boiled && form.elements["readings.boiled_minutes"]?.value !== "";
    if (pressed) {
      boiled.setAttribute("aria-pressed", "true");
      boiled.classList.add("chosen");
    }
    if (draft.ids) {
      Object.assign(form.dataset, { wish: draft.wish, ids: draft.ids });
    }
    const time = waiting.hour(draft.at, { weekday: "short" });
    const box = document.querySelector("template[data-draft]").content.cloneNode(true).firstElementChild;
    const told = box.querySelector("[data-says]");
    told.textContent = told.dataset.says.replace("[name]", draft.by).replace("[time]", time);
    box.querySelector("button").addEventListener("click", () => {
      drafts.over = true;
      drafts.drop();
      window.location.reload();
    });
    form.before(box);
    // What there is to weigh for a cure stands there again, with its caution.
    if (form.elements._batch && weights.grams(form.elements._batch) > 0) {
      plan.ask(form, weights.grams(form.elements._batch));
    }
  },

  begin(form) {
    drafts.restore(form);
    // Only what a hand does is kept, after everybody has answered to it.
    for (const kind of ["input", "change", "click", "submit"]) {
      document.addEventListener(kind, (event) => {
        if (event.isTrusted && (event.target.form ?? event.target.closest?.("form")) === form) {
          window.setTimeout(() => drafts.save(form), 0);
        }
      });
    }
    // It is on record, or waits on this device by itself.
    document.addEventListener("deed-done", () => {
      drafts.over = true;
      drafts.drop();
    });
    document.addEventListener("deed-waits", drafts.drop);
  },
};

document.querySelectorAll("form[data-drafts]").forEach(drafts.begin);
