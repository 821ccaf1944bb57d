// The end of a carcass on the bench: what is loss, what stays, and all of it as one deed.
"use strict";

const end = {
  form: document.querySelector("[data-record]"),

  render() {
    const kept = side.state.kept;
    end.form.hidden = kept.length === 0;
    if (kept.length === 0) {
      return;
    }
    const left = side.all() - side.off();
    const open = side.cuts.filter((cut) => !cut.before && side.of(cut.key) === 0);
    const list = open.map((cut) => cut.name).join(", ");
    side.show(end.part("not-weighed"), open.length > 0 ? side.say("not-weighed", { cuts: list }) : "");
    const { lossLow: low, lossHigh: high } = side.page.dataset;
    const values = {
      left: scale.weight(Math.abs(left)), all: scale.weight(side.all()),
      percent: ((left / side.all()) * 100).toFixed(1).replace(".", side.page.dataset.mark).replace("-", "\u2212"),
      low: scale.weight(Number(low), 2), high: scale.weight(Number(high), 2), cuts: list,
    };
    const scales = left < 0 && -left <= side.all() * 0.005;
    side.show(end.part("over"), left < 0 ? side.say("over", values) : "");
    end.part("rest").hidden = left === 0 || (left < 0 && !scales);
    end.part("rest-legend").textContent = left > 0 ? side.say("rest", values) : "";
    for (const name of ["rest-loss", "rest-stays", "rest-scales"]) {
      const choice = end.part(name);
      choice.hidden = name === "rest-scales" ? !scales : left <= 0;
      choice.querySelector("[data-says]").textContent = side.say(name, values);
      const input = choice.querySelector("input");
      input.required = left !== 0;
      input.disabled = choice.hidden;
      // A choice is about that much, and no other.
      input.checked = input.checked && !choice.hidden && left === end.left;
    }
    end.left = left;
    // All is weighed, and what is missing is what the knife and the cold usually take.
    const usual = high !== undefined && left > 0 && left <= Number(high) && open.length === 0;
    if (usual && !end.chosen()) {
      end.part("rest-loss").querySelector("input").checked = true;
    }
    const much = high !== undefined && left > Number(high);
    end.part("loss-says").className = much ? "warn" : "help";
    side.show(end.part("loss-says"), left > 0 && high !== undefined && end.chosen() !== "stays" ? side.say(much ? "loss-high" : "loss", values) : "");
    end.form.querySelector("button.grand").disabled = left < 0 && !scales;
    end.sentence(left);
  },

  part(name) {
    return end.form.querySelector(`[data-${name}]`);
  },

  chosen() {
    return end.form.querySelector("input[name=_rest]:checked:not(:disabled)")?.value ?? "";
  },

  // By product, in the order of the knife: one output each, its weights as packs.
  outputs() {
    const outputs = new Map();
    const order = (one) => {
      const nth = side.cuts.findIndex((cut) => cut.key === one.cut);
      return nth < 0 ? side.cuts.length : nth;
    };
    for (const one of [...side.state.kept].sort((a, b) => order(a) - order(b))) {
      outputs.set(one.product, [...(outputs.get(one.product) ?? []), one]);
    }
    return outputs;
  },

  sum(kept) {
    return kept.reduce((sum, one) => sum + one.mg, 0);
  },

  sentence(left) {
    const list = [...end.outputs().values()].map((kept) => `${kept[0].named} ${scale.weight(end.sum(kept))}`);
    const { _place: where } = end.form.elements;
    const place = where.selectedOptions[0].textContent;
    if (where.value === "") {
      deeds.write(end.part("deed-says"), document.documentElement.dataset.wants.replace("[what]", deeds.called(where)));
      return;
    }
    const said = [side.say("deed", { list: list.join(", "), off: scale.weight(side.off()), place })];
    if (left !== 0 && end.chosen()) {
      said.push(side.say(`deed-${end.chosen()}`, { left: scale.weight(Math.abs(left)) }));
    }
    deeds.write(end.part("deed-says"), said.join(" "));
  },

  // A weight that is typed and not kept is no part of the deed: it is asked about before that goes.
  unkept() {
    const typed = side.cut ? side.part("weight").value.trim() : "";
    side.show(end.part("unkept-says"), typed === "" ? "" : side.say("unkept", { cut: side.cut.says, typed }));
    end.part("unkept").hidden = typed === "";
    if (typed !== "") {
      end.part("unkept").focus();
    }
    return typed !== "";
  },

  // It is kept as by its own button, or goes; then the sentence says the deed anew.
  settled(keep) {
    end.part("unkept").hidden = true;
    if (keep) {
      side.keep(false);
    } else {
      side.choose(side.cut);
      end.form.querySelector("button.grand").focus();
    }
  },

  // The documented call, `POST /api/steps`.
  body() {
    const { kind, lot, pack, bench } = side.page.dataset;
    const left = side.all() - side.off();
    const rest = left === 0 ? "loss" : end.chosen();
    const place = end.form.elements._place.value;
    const drawn = rest === "stays" ? side.off() : side.all();
    const body = {
      kind, place: bench,
      inputs: [{ lot, pack: Number(pack), grams: drawn / 1000 }],
      outputs: [...end.outputs()].map(([product, kept]) => ({
        product, grams: end.sum(kept) / 1000, place,
        ...(kept.length > 1 ? { pack_grams: kept.map((one) => one.mg / 1000) } : {}),
      })),
    };
    if (rest === "scales") {
      body.added = [{ what: "scale-difference", grams: -left / 1000 }];
    }
    const note = end.note();
    return note === "" ? body : { ...body, note };
  },

  // What was odd and kept by a second word, and who else weighed.
  note() {
    const odd = side.state.kept.filter((one) => one.odd).map((one) => `${one.named} ${scale.weight(one.mg)}`);
    const by = [...new Set(side.state.kept.map((one) => one.by))];
    const said = [];
    if (odd.length > 0) {
      said.push(side.say("note-odd", { list: odd.join(", ") }));
    }
    if (by.some((one) => one !== side.page.dataset.by)) {
      said.push(side.say("note-by", { list: by.join(", ") }));
    }
    return said.join(" ");
  },
};

// The deed keeps its id on this device before it is sent: sent again after a cut or a reload, it is the same. While it
// waits for the line, other weights are another deed in its stead.
const plainly = deeds.send;
deeds.send = async (form, also = {}) => {
  if (form === end.form) {
    if (end.unkept()) {
      return;
    }
    form.dataset.body = JSON.stringify(end.body());
    const wish = JSON.stringify([[form.dataset.deed, { ...deeds.body(form), ...also }]]);
    const other = side.state.sent && side.state.sent.wish !== wish;
    if (other && !(await side.settle())) {
      const kept = await waiting.takeOut(side.state.sent.id, document.querySelector("template[data-kept]").dataset.why).catch(() => false);
      if (!kept) {
        deeds.tell(form);
        return;
      }
    }
    if (side.state.kept.length === 0) {
      window.location.reload();
      return;
    }
    if (!side.state.sent || other) {
      side.state.sent = { id: deeds.id(), wish, kept: side.state.kept.map((one) => one.at) };
    }
    form.dataset.ids = side.state.sent.id;
    form.dataset.wish = wish;
    side.save();
  }
  await plainly(form, also);
};

// It went through by itself, while its carcass was still on the screen.
document.addEventListener("deed-through", async (event) => {
  if (event.detail === side.state.sent?.id && await side.settle()) {
    window.location.assign(`${end.form.dataset.then}?did=${event.detail}`);
  }
});
