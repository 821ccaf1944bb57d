// A scanner types and presses Enter: wherever the finger was last, the typing lands in the page's
// own field. The pages work without this, too: that field is then one tap or Tab away.
"use strict";

document.addEventListener("keydown", (event) => {
  const field = document.querySelector("[data-scan]");
  const typed = event.key.length === 1 && event.key !== " ";
  if (!field || !typed || event.ctrlKey || event.altKey || event.metaKey) {
    return;
  }
  if (!["INPUT", "SELECT", "TEXTAREA"].includes(document.activeElement.tagName)) {
    field.value = "";
    field.focus();
  }
});

// A choice is made by choosing: no second tap.
document.addEventListener("change", (event) => {
  if (event.target.matches("select[data-now]")) {
    event.target.form.submit();
  }
});

// Coming back to a page: the field is ready for the next scan.
window.addEventListener("pageshow", (event) => {
  const field = document.querySelector("[data-scan][autofocus]");
  if (event.persisted && field) {
    field.focus();
    field.select();
  }
});
