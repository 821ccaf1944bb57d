// Weights as they are typed, as a scale sends them and as they are told, in the reader's own units. No text stands here.
"use strict";

const weights = {
  // What a unit is in grams.
  units: { g: 1, kg: 1000, lb: 453.59237, oz: 28.349523125 },

  // A weight as it was typed or as a scale sent it, in grams; without a unit it is in the field's own. What equals all that
  // there is, as far as it was typed, is all of it: rounding leaves nothing on hand that nobody sees.
  grams(field) {
    const { grams, step } = weights.typed(field);
    return weights.all(grams, step, Number(field.dataset.left));
  },

  // The same as it was typed, and what the last place of it weighs.
  typed(field) {
    const [, pounds, figure, unit] = /^\s*(?:(\d+)\s*lb\s*)?([\d\s\u00a0\u202f.,]+?)\s*(kg|g|lb|oz)?\s*$/i.exec(field.value) || [];
    const plain = figure?.replace(/[\s\u00a0\u202f]/g, "").replace(",", ".");
    const places = plain?.split(".")[1]?.length ?? 0;
    // After whole pounds come ounces.
    const one = weights.units[(unit || (pounds ? "oz" : field.dataset.unit) || "g").toLowerCase()];
    return {
      grams: plain === undefined ? NaN : Number(pounds || 0) * weights.units.lb + Number(plain) * one,
      step: one / 10 ** places,
    };
  },

  // No scale of a bench is finer than it shows: five thousandths of a pound at the most, common practice, no source.
  unseen: 0.005 * 453.59237,

  // All that there is, where no more than the rounding of so many typed figures is between the two.
  all(grams, step, left, many = 1) {
    return left > 0 && Math.abs(grams - left) <= Math.min(step / 2 * many, weights.unseen) + 0.0005 ? left : grams;
  },

  // A figure as the page's language writes it.
  written(value, digits = 3) {
    return value.toLocaleString(document.documentElement.lang, { maximumFractionDigits: digits });
  },

  // Does whoever reads it weigh in pounds?
  inPounds: document.documentElement.dataset.mass === "pounds",

  // So many grams, from a kilogram on in kilograms; for who weighs in pounds in ounces, from a pound on in decimal
  // pounds, as the pages write them.
  told(grams) {
    if (weights.inPounds) {
      const ounces = Math.round(grams / weights.units.oz * 10) / 10;
      return ounces < 16 ? `${weights.written(ounces)}\u00a0oz` : `${weights.written(grams / weights.units.lb, 2)}\u00a0lb`;
    }
    return weights.small(grams);
  },

  // What lies on the small scale is weighed in grams everywhere: salts, spices.
  small(grams) {
    return grams >= 1000 ? `${weights.written(grams / 1000)}\u00a0kg` : `${weights.written(grams, 1)}\u00a0g`;
  },
};
