// A weight that is far from what is usual is asked about once before it is recorded: grams were typed for kilograms, or
// ounces for pounds. Nothing is refused here, and no text stands here.
"use strict";

const odd = {
  // Units are that far apart, and no weight of a kitchen is by chance: common practice, no source.
  apart: 12,

  // The least and the most in grams that nobody is asked about; nothing where nothing is known.
  bounds(form, field) {
    const { oddBy, oddOf, oddLeast, oddMost } = field.dataset;
    if (oddOf !== undefined) {
      const of = oddOf === "pot" ? odd.pot(form) : Number(oddOf);
      return of > 0 ? { least: of / odd.apart, most: of * odd.apart } : {};
    }
    if (oddBy !== undefined) {
      const chosen = Array.from(form.elements).filter((one) => one.name === oddBy).find((one) => one.type !== "radio" || one.checked);
      const { oddLeast: least, oddMost: most } = (chosen?.selectedOptions?.[0] ?? chosen)?.dataset ?? {};
      const head = Number(deeds.chosen(form, "animal.head")) || 1;
      return { least: Number(least ?? 0) * head, most: (Number(most) || Infinity) * head };
    }
    return { least: Number(oddLeast ?? 0), most: Number(oddMost) || Infinity };
  },

  // What goes into a pot.
  pot(form) {
    return pot.rows(form).filter(({ tick }) => tick.checked).reduce((all, row) => all + (pot.grams(row) || 0), 0);
  },

  // The first weight of a form that is far off.
  found(form) {
    const asked = Array.from(form.elements).filter((field) => !field.disabled
      && field.matches("[data-as=weight]:is([data-odd-by], [data-odd-of], [data-odd-least], [data-odd-most])"));
    return asked.find((field) => {
      const times = field.dataset.times ? Number(deeds.chosen(form, field.dataset.times)) || 1 : 1;
      const grams = weights.grams(field) * times;
      const { least = 0, most = Infinity } = odd.bounds(form, field);
      return grams > 0 && (grams < least || grams > most) && form.dataset.sure !== odd.said(field);
    });
  },

  said(field) {
    return `${field.name}=${field.value.trim()}`;
  },

  // Asks, and says whether it did: who says that it is right is not asked again of the same weight.
  asks(form) {
    const words = document.querySelector("template[data-odd-asks]");
    const field = words && odd.found(form);
    if (!field) {
      return false;
    }
    const box = words.content.cloneNode(true).firstElementChild;
    const shown = `${field.value.trim()} ${/[a-z]\s*$/i.test(field.value) ? "" : field.dataset.unit}`.trim();
    box.querySelector("[data-says]").textContent = box.querySelector("[data-says]").dataset.says.replace("[weight]", shown);
    field.setAttribute("aria-invalid", "true");
    box.querySelector("[data-correct]").addEventListener("click", () => refused.go(field));
    box.querySelector("[data-sure]").addEventListener("click", () => {
      form.dataset.sure = odd.said(field);
      field.removeAttribute("aria-invalid");
      deeds.quiet();
      form.requestSubmit();
    });
    deeds.show(form, box);
    return true;
  },
};

// Before the deed is sent, whoever sends it.
document.addEventListener("submit", (event) => {
  if (event.target.matches("form[data-deed]") && odd.asks(event.target)) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
}, true);
