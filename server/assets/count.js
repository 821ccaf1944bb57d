// The count of a recall: a scan is a search of the same page, and what lies there as the book has it is counted by it
// alone. What is done with several lots at once is a call for each, with an id of its own, one after the other.
"use strict";

const counting = {
  // The form that the scan counts, once: a page that comes back by the back button counts nothing again.
  alone() {
    const form = document.querySelector("form[data-alone]");
    const [entry] = performance.getEntriesByType("navigation");
    if (form && entry && entry.type === "navigate") {
      form.requestSubmit();
    }
  },

  // The packs of a lot that are meant: those that are ticked, or typed; none is all.
  packs(form, lot) {
    const all = Array.from(form.querySelectorAll(`[data-of="${lot}"]`));
    return all.filter((field) => field.type !== "checkbox" || field.checked).flatMap((field) => deeds.packs(field.value));
  },

  // The same deed with each lot that is ticked, or with packs of it; a second press goes on with those that are left.
  async each(form) {
    const boxes = Array.from(form.querySelectorAll("[name=_each]"));
    boxes[0].setCustomValidity(boxes.some((box) => box.checked) ? "" : form.querySelector("legend").textContent);
    if (form.dataset.busy || !form.reportValidity()) {
      return;
    }
    form.dataset.busy = "yes";
    form.ids ??= {};
    form.did ??= [];
    for (const box of boxes.filter((one) => one.checked)) {
      const lot = box.value;
      form.ids[lot] ??= deeds.id();
      const asked = { id: form.ids[lot], ...deeds.body(form), lot };
      const packs = counting.packs(form, lot);
      if (packs.length > 0) {
        asked.packs = packs;
      }
      const { done, refused, away } = await deeds.post(form.dataset.each, asked);
      if (refused || away) {
        delete form.ids[lot];
        deeds.tell(form, refused);
        break;
      }
      form.did.push(done.id);
      box.checked = false;
    }
    delete form.dataset.busy;
    if (!boxes.some((box) => box.checked)) {
      const then = new URL(form.dataset.then, window.location.origin);
      then.searchParams.set("did", form.did.join(","));
      window.location.assign(then.href);
    }
  },
};

document.addEventListener("submit", (event) => {
  if (event.target.matches("form[data-each]")) {
    event.preventDefault();
    counting.each(event.target);
  }
});

// A pack that is ticked brings its lot along.
document.addEventListener("change", ({ target }) => {
  const box = target.matches("[name=_pack]:checked") && target.form.querySelector(`[name=_each][value="${target.dataset.of}"]`);
  if (box) {
    box.checked = true;
    box.setCustomValidity("");
  }
});

// All at once is one tap; what was asked for is asked for anew only where nothing is ticked.
document.addEventListener("click", (event) => {
  const form = event.target.closest("[data-tick-all]")?.closest("form");
  form?.querySelectorAll("[name=_each]").forEach((box) => {
    box.checked = true;
  });
  document.querySelector("form[data-each] [name=_each]")?.setCustomValidity("");
});

counting.alone();
