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

  // The same deed with each lot that is ticked, or with packs of it; a second press goes on with those that are left.
  async each(form) {
    const boxes = Array.from(form.querySelectorAll("[name=_each]"));
    boxes[0].setCustomValidity(boxes.some((box) => box.checked) ? "" : form.querySelector("legend").textContent);
    if (form.dataset.busy || !form.reportValidity()) {
      return;
    }
    form.dataset.busy = "yes";
    form.ids ??= {};
    for (const box of boxes.filter((one) => one.checked)) {
      const lot = box.value;
      form.ids[lot] ??= deeds.id();
      const asked = { id: form.ids[lot], ...deeds.body(form), lot };
      const packs = form.querySelector(`[data-of="${lot}"]`);
      if (packs.value.trim() !== "") {
        asked.packs = deeds.packs(packs.value);
      }
      const { refused, away } = await deeds.post(form.dataset.each, asked);
      if (refused || away) {
        delete form.ids[lot];
        deeds.tell(form, refused);
        break;
      }
      box.checked = false;
    }
    delete form.dataset.busy;
    if (!boxes.some((box) => box.checked)) {
      window.location.assign(form.dataset.then);
    }
  },
};

document.addEventListener("submit", (event) => {
  if (event.target.matches("form[data-each]")) {
    event.preventDefault();
    counting.each(event.target);
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
