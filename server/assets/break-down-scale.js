// The scale of the bench: weights as they are typed and shown, and the line on which a weight stands beside what is
// usual. Weights are whole milligrams; the page says in which unit they are read and written.
"use strict";

const scale = {
  // A weight with the decimals of a scale; of what is usual, one less.
  figure(mg, places = Number(side.page.dataset.places)) {
    const figure = (mg / Number(side.page.dataset.milligrams)).toFixed(places);
    return figure.replace(".", side.page.dataset.mark).replace("-", "\u2212");
  },

  weight(mg, places) {
    return `${scale.figure(mg, places)}\u00a0${side.page.dataset.unit}`;
  },

  // What a hand or a scale types: "4.05", "4,05", "ST,GS,+  4.050 kg", "8 lb 14.9 oz". Nothing where it is no weight.
  read(text) {
    const units = { kg: 1e6, g: 1e3, lb: 453592.37, oz: 28349.523125 };
    const found = [...text.matchAll(/([0-9][0-9\s\u00a0\u202f]*(?:[.,][0-9]+)?|[.,][0-9]+)\s*(kg|g|lb|oz)?(?![a-z])/gi)];
    const worth = ([, figure, unit]) => deeds.figure(figure) * units[(unit || side.page.dataset.unit).toLowerCase()];
    const ounces = found.slice(1, 2).filter(([, , unit]) => unit && unit.toLowerCase() === "oz");
    return Math.round([...found.slice(0, 1), ...ounces].reduce((sum, one) => sum + worth(one), 0));
  },

  // The line under the weight: what is usual hatched, with figures below it.
  draw(cut) {
    const band = side.part("band");
    const usual = cut.usual ? scale.figure(cut.usual, 2) : "";
    const unit = side.page.dataset.unit;
    const values = { cut: cut.full, usual, unit, low: scale.figure(cut.low, 2), high: scale.figure(cut.high, 2) };
    const name = cut.low ? "usual" : "usual-alone";
    side.show(side.part("usual-says"), usual ? side.say(name, values) : "");
    side.part("usual-source").textContent = cut.source;
    side.part("usual-why").hidden = !usual || !cut.source;
    band.toggleAttribute("hidden", !cut.low);
    if (!cut.low) {
      return;
    }
    const one = Number(side.page.dataset.milligrams);
    const wide = (cut.high - cut.low) / one;
    const step = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50].find((each) => wide / each <= 4) ?? 100;
    const parts = [["path", { class: "axis", d: "M20 62H580" }],
      ["rect", { class: "usual", x: 160, y: 34, width: 280, height: 28 }],
      ["path", { class: "tick", d: `M${scale.at(cut, cut.usual)} 34v28` }]];
    const first = Math.ceil(scale.figureAt(cut, 40) / one / step);
    for (let nth = first; nth * step * one <= scale.figureAt(cut, 560); nth += 1) {
      const x = scale.at(cut, nth * step * one);
      const places = Math.max(0, -Math.floor(Math.log10(step)));
      const shown = nth % 2 === 0 ? "" : "odd";
      parts.push(["path", { class: "tick", d: `M${x} 62v8` }], ["text", { x, y: 98, class: shown }, scale.figure(nth * step * one, places)]);
    }
    parts.push(["path", { class: "needle", d: "" }]);
    band.innerHTML = "<defs><pattern id=\"usual\" width=\"10\" height=\"10\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path d=\"M0 0h3v10H0z\"/></pattern></defs>";
    for (const [tag, attributes, text] of parts) {
      const part = document.createElementNS("http://www.w3.org/2000/svg", tag);
      Object.entries(attributes).forEach(([key, value]) => part.setAttribute(key, value));
      part.textContent = text ?? "";
      band.append(part);
    }
    side.judge(side.odd);
  },

  at(cut, mg) {
    return Math.round(160 + ((mg - cut.low) / (cut.high - cut.low)) * 280);
  },

  figureAt(cut, x) {
    return cut.low + ((x - 160) / 280) * (cut.high - cut.low);
  },

  needle(whole, mg) {
    const needle = side.part("band").querySelector(".needle");
    if (!needle || !side.cut || !side.cut.low) {
      return;
    }
    const x = Math.max(30, Math.min(570, scale.at(side.cut, whole)));
    needle.setAttribute("d", mg > 0 ? `M${x} 32l-15 -28h30z` : "");
    const values = { usual: scale.weight(side.cut.usual, 2), low: scale.weight(side.cut.low, 2), high: scale.weight(side.cut.high, 2), weight: scale.weight(whole) };
    side.part("band").setAttribute("aria-label", side.say("band", values));
  },
};
