// What was said on the phone is looked for while it is typed: what it may be stands below without another tap. Where the
// line is away, the button of the form says so.
"use strict";

const recall = {
  // So long nobody types before it is looked for.
  pause: 300,
  turn: 0,
  timer: undefined,

  async look(form) {
    recall.turn += 1;
    const { turn } = recall;
    const asked = new URLSearchParams(new FormData(form));
    try {
      const answer = await fetch(`${form.getAttribute("action")}?${asked}`);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const found = page.querySelector("[data-found]");
      if (answer.ok && found && turn === recall.turn) {
        document.querySelector("[data-found]").replaceWith(found);
      }
    } catch {
      // Nothing is lost: what stood there stands.
    }
  },
};

document.addEventListener("input", ({ target }) => {
  if (target.matches("[data-live]")) {
    clearTimeout(recall.timer);
    recall.timer = setTimeout(() => recall.look(target.form), recall.pause);
  }
});
