// Codes of two or three letters, which begin the codes of lots: one is proposed of the name, a letter that cannot
// stand in one is told as it is typed. No text stands here.
"use strict";

const codes = {
  // Letters that are read as figures on a wet tag, or for one another.
  WRONG: /[^A-HJKMNP-TV-Z]/g,
  // Words that nobody calls a house by.
  SMALL: new Set(["AND", "THE", "OF", "AT", "ET", "DE", "DU", "DES", "LA", "LE", "LES", "AU", "AUX"]),

  plain(text) {
    return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toUpperCase();
  },

  // What a name might be called for short: the letter that each of its words begins with; of one word, its own letters.
  of(name) {
    const words = codes.plain(name).split(/[^A-Z]+/).filter((word) => word && !codes.SMALL.has(word));
    const letters = words.map((word) => word.replace(codes.WRONG, "")).filter(Boolean);
    const code = letters.length > 1 ? letters.map((word) => word[0]).join("") : letters.join("");
    return code.slice(0, 3);
  },

  // Proposes it, as long as nobody wrote another.
  propose(form) {
    const field = form.querySelector("input[data-code-of]");
    if (field && !field.readOnly && (field.value === "" || field.value === field.dataset.proposed)) {
      field.dataset.proposed = codes.of(form.elements[field.dataset.codeOf].value);
      field.value = field.dataset.proposed;
      codes.judge(field);
    }
  },

  // Names the letter that cannot stand there.
  judge(field) {
    const wrong = field.value.match(codes.WRONG);
    const says = wrong ? field.dataset.wrong.replace("[letter]", wrong[0]) : "";
    field.setCustomValidity(says);
    if (says === "") {
      field.removeAttribute("aria-invalid");
    } else {
      field.setAttribute("aria-invalid", "true");
    }
    let told = field.closest("label").nextElementSibling;
    if (!told?.matches("[data-wrong-says]")) {
      told = document.createElement("p");
      told.className = "warn";
      told.dataset.wrongSays = "";
      told.setAttribute("role", "alert");
      field.closest("label").after(told);
    }
    told.hidden = says === "";
    told.textContent = says;
  },
};

// A code is in capital letters, however it is typed.
document.addEventListener("input", (event) => {
  const field = event.target;
  if (field.matches("input[data-upper]") && field.value !== field.value.toUpperCase()) {
    const at = field.selectionStart;
    field.value = field.value.toUpperCase();
    field.setSelectionRange(at, at);
  }
  if (field.matches("input[data-code-of]")) {
    codes.judge(field);
  } else if (field.form?.querySelector("input[data-code-of]")?.dataset.codeOf === field.name) {
    codes.propose(field.form);
  }
});
