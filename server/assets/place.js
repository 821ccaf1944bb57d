// Several packs of a place: chosen by their numbers, or scanned where they stand. Each lot of which something is chosen
// is one call. No text stands here.
"use strict";

const batch = {
  // The packs of a lot on the page: its fields.
  fields(part) {
    return Array.from(part.querySelectorAll("[name=_packs]"));
  },

  lots(form) {
    return Array.from(form.querySelectorAll("[data-lot]"));
  },

  isCount(form) {
    return form.dataset.batch === "/api/counts";
  },

  // What the form asks for, one call a lot.
  asked(form) {
    return batch.isCount(form) ? batch.counted(form) : batch.chosen(form);
  },

  chosen(form) {
    const body = deeds.body(form);
    const each = batch.lots(form).map((part) => ({ lot: part.dataset.lot, packs: batch.fields(part).filter((field) => field.checked) }));
    return each.filter(({ packs }) => packs.length > 0)
      .map(({ lot, packs }) => [form.dataset.batch, { ...body, lot, packs: packs.map((field) => Number(field.value)) }]);
  },

  // What was ticked is there as the record has it, what was not is missing; what stood elsewhere comes here, and what
  // had left is counted in by its weight.
  counted(form) {
    const place = form.dataset.place;
    const packs = (part) => batch.fields(part).map((field) => {
      const pack = Number(field.value);
      return field.checked ? { pack, grams: Number(field.dataset.grams) } : { pack, missing: true };
    });
    const here = batch.lots(form).map((part) => ["/api/counts", { place, lot: part.dataset.lot, packs: packs(part) }]);
    const found = Array.from(form.querySelectorAll("[data-found-lot]")).map((part) => {
      const { foundLot: lot, pack } = part.dataset;
      const weight = part.querySelector("[name=_weight]");
      return weight
        ? ["/api/counts", { place, lot, packs: [{ pack: Number(pack), grams: Math.round(weights.grams(weight) * 1000) / 1000 }] }]
        : ["/api/moves", { lot, packs: [Number(pack)], to: place }];
    });
    // Nothing looked at yet is not everything missing.
    const looked = found.length > 0 || batch.lots(form).flatMap(batch.fields).some((field) => field.checked);
    return looked ? [...here, ...found] : [];
  },

  follow(form) {
    const fields = batch.lots(form).flatMap(batch.fields);
    const there = fields.filter((field) => field.checked).length;
    form.elements._count.value = there;
    form.elements._missing.value = fields.length - there;
    form.elements._more.value = form.querySelectorAll("[data-found-lot]").length;
    form.querySelector("[data-nothing]").hidden = true;
    deeds.sentence(form);
  },

  // A pack that was scanned where it stands.
  async found(form, field) {
    const code = field.value.trim();
    field.value = "";
    if (code === "") {
      return;
    }
    const [lot, number] = code.split("/L/").pop().split("/");
    const plain = lot.replace(/[-\s]/g, "").toUpperCase();
    const part = batch.lots(form).find((one) => one.dataset.lot === plain);
    const known = part && batch.fields(part);
    const it = known && (number ? known.find((one) => Number(one.value) === Number(number)) : known.length === 1 && known[0]);
    if (it) {
      it.checked = true;
      batch.follow(form);
      it.closest("label").scrollIntoView({ block: "center" });
      return;
    }
    const response = await fetch(`/api/lots/${encodeURIComponent(lot)}`).catch(() => null);
    if (!response) {
      deeds.tell(form);
      return;
    }
    const read = await response.json();
    if (!response.ok) {
      deeds.tell(form, read);
      return;
    }
    const pack = read.packs.find((one) => (number ? one.pack === Number(number) : read.packs.length === 1));
    const name = form.querySelector(pack && pack.left_grams > 0 ? "template[data-elsewhere]" : "template[data-back]");
    if (!pack || form.querySelector(`[data-found-lot="${read.code}"][data-pack="${pack.pack}"]`)) {
      field.setAttribute("aria-invalid", String(!pack));
      return;
    }
    field.removeAttribute("aria-invalid");
    const shown = name.content.cloneNode(true).firstElementChild;
    shown.dataset.foundLot = read.code;
    shown.dataset.pack = pack.pack;
    shown.querySelector("[data-name]").textContent = read.names?.[document.documentElement.lang] ?? read.names?.en ?? read.product;
    shown.querySelector("[data-code]").textContent = read.packs.length > 1 ? `${read.shown}/${pack.pack}` : read.shown;
    form.querySelector("[data-more-found]").append(shown);
    batch.follow(form);
    shown.querySelector("input")?.focus();
  },
};

document.addEventListener("input", (event) => {
  const form = event.target.form;
  if (form && form.matches("form[data-batch]")) {
    batch.follow(form);
  }
});

document.addEventListener("keydown", (event) => {
  const form = event.target.form;
  if (event.key === "Enter" && event.target.name === "_scan" && form && form.matches("form[data-batch]")) {
    event.preventDefault();
    event.stopImmediatePropagation();
    batch.found(form, event.target);
  }
}, true);

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  const form = button && button.form;
  if (!form || !form.matches("form[data-batch]")) {
    return;
  }
  if (button.matches("[data-whole]")) {
    const fields = batch.fields(button.closest("[data-lot]"));
    const all = fields.every((field) => field.checked);
    fields.forEach((field) => { field.checked = !all; });
    batch.follow(form);
  } else if (button.matches("[data-found]")) {
    const field = form.elements._scan;
    field.value.trim() === "" ? field.focus() : batch.found(form, field);
  }
});

document.addEventListener("DOMContentLoaded", () => document.querySelectorAll("form[data-batch]").forEach(batch.follow));
