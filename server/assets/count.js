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

  // The same deed with each lot; a second press goes on with those that are left.
  async each(form) {
    if (form.dataset.busy) {
      return;
    }
    form.dataset.busy = "yes";
    const lots = JSON.parse(form.dataset.lots);
    form.ids ??= {};
    while (lots.length > 0) {
      form.ids[lots[0]] ??= deeds.id();
      const asked = { ...deeds.body(form), lot: lots[0] };
      const { refused, away } = await deeds.post(form.dataset.each, { id: form.ids[lots[0]], ...asked });
      if (refused || away) {
        delete form.ids[lots[0]];
        deeds.tell(form, refused);
        break;
      }
      lots.shift();
      form.dataset.lots = JSON.stringify(lots);
    }
    delete form.dataset.busy;
    if (lots.length === 0) {
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

counting.alone();
