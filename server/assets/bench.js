// Forms of the bench: rows of what goes in, readings with their hours, a plan
// in grams before anybody weighs. What a form sends is put together by deeds.js; no text stands here.
"use strict";

const bench = {
  // The moment that an hour of a reading stands for. The last reading is not later than now, and none is later than
  // the one after it: what is, was on the day before.
  moment(form, wanted) {
    const { day, clock, offset } = form.dataset;
    const gone = Math.floor(performance.now() / 60000);
    const [hours, minutes] = clock.split(":").map(Number);
    let date = Date.parse(`${day}T00:00:00Z`);
    let latest = date + (hours * 60 + minutes + gone) * 60000;
    const fields = Array.from(form.querySelectorAll("[data-as=when]")).filter((field) => field.value !== "");
    for (const field of fields.reverse()) {
      const [hour, minute] = field.value.split(":").map(Number);
      let at = date + (hour * 60 + minute) * 60000;
      while (at > latest) {
        at -= 86400000;
        date -= 86400000;
      }
      latest = at;
      if (field === wanted) {
        return `${new Date(at).toISOString().slice(0, 19)}${offset}`;
      }
    }
    return null;
  },

  // The kitchen's clock, as the page was told it and as time went on since.
  clock(form) {
    const [hours, minutes] = form.dataset.clock.split(":").map(Number);
    const now = (hours * 60 + minutes + Math.floor(performance.now() / 60000)) % 1440;
    return [Math.floor(now / 60), now % 60].map((part) => String(part).padStart(2, "0")).join(":");
  },

  // How many minutes are left until each hour that is due.
  tick() {
    const gone = Math.floor(performance.now() / 60000);
    document.querySelectorAll("[data-minutes-left]").forEach((shown) => {
      const left = Number(shown.dataset.minutesLeft) - gone;
      const [hours, minutes] = [Math.floor(Math.abs(left) / 60), Math.abs(left) % 60];
      const told = [hours > 0 ? `${hours}\u00a0h` : "", `${minutes}\u00a0min`].filter(Boolean).join(" ");
      shown.textContent = (left < 0 ? shown.dataset.over : shown.dataset.more).replace("[left]", told);
      shown.classList.toggle("over", left < 0);
    });
  },

  // The day of each hour that is not today's: a later hour than now was on the day before, and that is seen.
  days(form) {
    const written = new Intl.DateTimeFormat(document.documentElement.dataset.days, { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" });
    form.querySelectorAll("[data-on-day]").forEach((shown) => {
      const moment = bench.moment(form, shown.previousElementSibling);
      const day = moment?.slice(0, 10);
      shown.hidden = !day || day === form.dataset.day;
      shown.textContent = shown.hidden ? "" : written.format(Date.parse(`${day}T00:00:00Z`));
    });
  },

  // What is worked out of what is typed, before the sentence is said.
  follow(form) {
    bench.days(form);
    form.querySelectorAll("[data-lost-of]").forEach((shown) => {
      const green = Number(shown.dataset.lostOf);
      const now = weights.grams(form.elements.grams);
      shown.value = now > 0 && now <= green ? `${weights.written((1 - now / green) * 100, 1)}\u00a0%` : "";
    });
    form.querySelectorAll("[data-of]").forEach((field) => {
      const chosen = form.querySelector(`[name="${field.dataset.of}"]:checked`);
      field.value = chosen?.dataset[field.dataset.key] ?? "";
    });
    bench.sides(form);
    bench.arrives(form);
    if (form.matches("[data-pot]")) {
      pot.follow(form);
    }
    if (form.querySelector("[data-curve]")) {
      heat.draw(form);
    }
  },

  // What is said of an animal before it is taken: that it has no number, that a part is no whole one, how many birds.
  arrives(form) {
    const chosen = form.querySelector("[name=product]:checked")?.dataset ?? {};
    const whole = deeds.chosen(form, "animal.side") === "whole";
    // What is told of some animals only.
    const ofAnimal = (told) => told.dataset.animals === undefined || told.dataset.animals.split(" ").includes(chosen.species);
    form.querySelectorAll("[data-if-lacks]").forEach((told) => {
      const lacks = form.elements[told.dataset.ifLacks].selectedOptions[0]?.dataset.lacks;
      told.hidden = lacks === undefined || !ofAnimal(told);
      told.querySelector("a")?.setAttribute("href", lacks ?? "/lists");
    });
    form.querySelectorAll("[data-if-none]").forEach((told) => {
      // Nobody is warned of a field that they have not come to yet.
      told.hidden = !(weights.grams(form.elements.grams) > 0)
        || !ofAnimal(told)
        || told.dataset.ifNone.split(" ").some((name) => deeds.chosen(form, name).trim() !== "");
    });
    form.querySelectorAll("[data-if-part-whole]").forEach((told) => { told.hidden = !whole || chosen.part === undefined; });
    const salt = form.querySelector("select[name=product]")?.selectedOptions[0]?.dataset.salt;
    form.querySelectorAll("[data-if-salt]").forEach((asked) => {
      asked.hidden = salt === undefined && asked.dataset.asked === undefined;
      asked.querySelectorAll("input").forEach((field) => { field.disabled = asked.hidden; });
      asked.querySelector("[data-listed]").textContent = asked.querySelector("[data-listed]").dataset.listed.replace("[percent]", salt ?? "");
    });
    form.querySelectorAll("[data-if-bird]").forEach((field) => { field.hidden = chosen.bird === undefined; });
  },

  // Only the parts that it usually comes as are offered; the others are one tap further.
  sides(form) {
    const others = form.querySelector("[data-all-sides]");
    const told = form.querySelector("[name=product]:checked")?.dataset.sides;
    if (!others || !told) {
      return;
    }
    const usual = others.dataset.shown === undefined ? told.split(" ") : null;
    let hidden = 0;
    form.querySelectorAll("[name='animal.side']").forEach((side) => {
      const fits = usual === null || usual.includes(side.value);
      side.closest("label").hidden = !fits;
      side.checked = fits && (side.checked || usual?.length === 1);
      hidden += fits ? 0 : 1;
    });
    others.hidden = hidden === 0;
  },

  // Enter moves on to the next field: a scale and a scanner press it after each thing.
  next(form, field) {
    const fields = Array.from(form.elements).filter((one) => one.matches("input:not([type=hidden]):not([type=radio]):not([type=checkbox]), select") && one.offsetParent);
    const after = fields[fields.indexOf(field) + 1];
    (after || form.querySelector("button.grand")).focus();
  },
};

// A pot: lots go in, something comes out.
const pot = {
  rows(form) {
    return Array.from(form.querySelectorAll("[data-row]")).map((row) => ({
      row,
      tick: row.querySelector("input[type=checkbox]"),
      field: row.querySelector("[data-as=weight]"),
      left: Number(row.dataset.left),
    }));
  },

  // How much of a row goes in: what is typed, else all that is left.
  grams({ field, left }) {
    return field.value.trim() === "" ? left : weights.grams(field);
  },

  follow(form) {
    const rows = pot.rows(form);
    const ticked = rows.filter(({ tick }) => tick.checked);
    rows.forEach(({ row, tick }) => row.classList.toggle("in", tick.checked));
    const added = Array.from(form.querySelectorAll("[data-added]")).map((field) => weights.grams(field)).filter((grams) => grams > 0);
    const sum = ticked.reduce((all, row) => all + (pot.grams(row) || 0), 0) + added.reduce((all, one) => all + one, 0);
    form.elements._sum.value = sum > 0 ? weights.told(sum) : "";
    form.elements._lots.value = ticked.length;
    // A pot of nothing is not sent: said where a lot is scanned, in front of the cook.
    form.elements._scan.setCustomValidity(ticked.length > 0 ? "" : form.dataset.nothing);
    const made = form.elements["outputs.0.grams"];
    if (made.dataset.follows !== undefined) {
      // What goes in comes out, whatever the field shows of it.
      made.dataset.left = sum;
      if (made.dataset.typed === undefined) {
        made.value = sum > 0 ? pot.written(made, sum, 10) : "";
      }
    }
  },

  // The batch was told: each part has its share of it, from the first lots on.
  share(form) {
    const batch = weights.grams(form.elements._batch);
    const base = Number(form.dataset.base);
    if (!(batch > 0) || !(base > 0)) {
      return;
    }
    const parts = Array.from(form.querySelectorAll("[data-part]"));
    const brought = (part) => Number(part.dataset.part) === 0;
    parts.filter((part) => !brought(part)).forEach((part) => pot.fill(part, batch * Number(part.dataset.part) / base));
    form.querySelectorAll("[data-added]").forEach((field) => {
      pot.set(field, batch * Number(field.dataset.added) / base);
    });
    // What was brought along and no recipe names stands for what the others do not reach.
    const taken = parts.filter((part) => !brought(part)).flatMap(pot.rows).filter(({ tick }) => tick.checked).reduce((all, row) => all + (pot.grams(row) || 0), 0);
    const water = Array.from(form.querySelectorAll("[data-added]"), (field) => weights.grams(field) || 0).reduce((all, one) => all + one, 0);
    const rest = batch - taken - water;
    parts.filter((part) => brought(part) && rest > 0.05).forEach((part) => pot.fill(part, rest));
    bench.follow(form);
    deeds.sentence(form);
    plan.ask(form, batch);
  },

  // So much of a part: the ticked lots first come first drawn on; where they do not reach, the next is ticked.
  fill(part, amount) {
    let wanted = amount;
    const rows = pot.rows(part);
    // Where a person said which, it is of those and of no other.
    const said = rows.some(({ tick }) => tick.checked && tick.dataset.said !== undefined);
    for (const each of rows) {
      if (each.field.dataset.typed !== undefined) {
        wanted -= each.tick.checked ? pot.grams(each) : 0;
        continue;
      }
      if (said ? !each.tick.checked || each.tick.dataset.said === undefined : each.tick.dataset.said !== undefined) {
        each.tick.checked = false;
        pot.set(each.field, 0);
        continue;
      }
      const takes = Math.min(wanted, each.left);
      each.tick.checked = takes > 0.04;
      pot.set(each.field, each.tick.checked ? takes : 0);
      wanted -= Math.max(takes, 0);
    }
    part.classList.toggle("short", wanted > 0.05);
    const told = part.querySelector("[data-chosen]");
    if (told) {
      told.hidden = wanted <= 0.05;
      const says = rows[0].field.dataset.unit === "g" ? weights.small : weights.told;
      told.textContent = told.dataset.chosen.replace("[chosen]", says(amount - wanted)).replace("[wanted]", says(amount));
    }
  },

  // What is recorded is the figure that was shown to be weighed: by the tenth, from a kilogram on by the gram.
  set(field, grams) {
    field.value = grams > 0 ? pot.written(field, grams, grams < 1000 ? 10 : 1) : "";
  },

  // Grams as a field takes them: so many parts of a gram, or hundredths of its own larger unit.
  written(field, grams, parts) {
    const unit = field.dataset.unit ?? "g";
    const fine = unit === "g" ? parts : 100;
    return String(Math.round(grams / weights.units[unit] * fine) / fine);
  },

  // A lot that was scanned or typed goes in, too.
  async scan(form, field) {
    const code = field.value.trim();
    if (code === "") {
      return;
    }
    const known = pot.rows(form).find(({ tick }) => tick.value.split("/")[0] === code.replace(/[-\s]/g, "").toUpperCase().split("/")[0]);
    if (known) {
      known.tick.checked = true;
      field.value = "";
      bench.follow(form);
      deeds.sentence(form);
      return;
    }
    const [lot, number] = code.split("/L/").pop().split("/");
    const response = await fetch(`/api/lots/${encodeURIComponent(lot)}`);
    const read = await response.json();
    if (!response.ok) {
      deeds.tell(form, read);
      return;
    }
    const pack = read.packs.find((one) => (number ? one.pack === Number(number) : one.left_grams > 0));
    if (!pack) {
      field.setAttribute("aria-invalid", "true");
      return;
    }
    const row = form.querySelector("template[data-new-row]").content.cloneNode(true).firstElementChild;
    const nth = pot.rows(form).length;
    row.dataset.left = pack.left_grams;
    row.querySelector("[data-name]").textContent = read.names[document.documentElement.lang] || read.names.en || read.product;
    row.querySelector("[data-code]").textContent = `${read.shown}${read.packs.length > 1 ? `/${pack.pack}` : ""}, ${weights.told(pack.left_grams)}`;
    const tick = row.querySelector("input[type=checkbox]");
    tick.name = `inputs.${nth}.lot`;
    tick.value = read.packs.length > 1 ? `${read.code}/${pack.pack}` : read.code;
    row.querySelector("[data-as=weight]").name = `inputs.${nth}.grams`;
    row.querySelector("[data-as=weight]").dataset.left = pack.left_grams;
    form.querySelector("[data-extra]").append(row);
    field.value = "";
    field.removeAttribute("aria-invalid");
    bench.follow(form);
    deeds.sentence(form);
    row.querySelector("[data-as=weight]").focus();
  },
};

// A cure is worked out by the service before anybody weighs.
const plan = {
  // What somebody weighed otherwise than it was planned, as a share of the meat.
  typed(part, meat) {
    const rows = part ? pot.rows(part) : [];
    if (!rows.some(({ field }) => field.dataset.typed !== undefined)) {
      return undefined;
    }
    const sum = rows.filter(({ tick }) => tick.checked).reduce((all, row) => all + (pot.grams(row) || 0), 0);
    return sum * 100 / meat;
  },

  // The last question: an answer to an earlier one is of another weight, and comes too late.
  last: 0,

  async ask(form, meat) {
    const shown = form.querySelector("[data-plan]");
    if (!shown) {
      return;
    }
    const part = (role) => form.querySelector(`[data-role="${role}"]`);
    const share = (role) => plan.typed(part(role), meat) ?? Number(part(role)?.dataset.part || 0) * 100 / Number(form.dataset.base);
    const salt = pot.rows(part("curing-salt")).find(({ tick }) => tick.checked);
    const strength = JSON.parse(salt?.row.dataset.strength || shown.dataset.strength);
    const dose = share("curing-salt");
    const plain = strength.salt_percent ?? 100 - (strength.nitrite_percent || 0) - (strength.nitrate_percent || 0);
    // To the millionth, as the service takes it, and never less: of what was typed in grams nothing is cut off.
    const exact = (figure) => Math.ceil(figure * 1000000 - 0.0001) / 1000000;
    const asked = {
      ...JSON.parse(shown.dataset.plan),
      meat_grams: Math.round(meat * 1000) / 1000,
      curing_salt: strength,
      dose_percent: exact(dose),
      salt_percent: exact(share("salt") + dose * plain / 100),
      sugar_percent: exact(share("sugar")),
    };
    const water = form.querySelector("[data-added]");
    if (water && weights.grams(water) > 0) {
      asked.water_grams = Math.round(weights.grams(water) * 1000) / 1000;
      // With water, every share is of meat and water together.
      const whole = meat / (meat + asked.water_grams);
      for (const name of ["dose_percent", "salt_percent", "sugar_percent"]) {
        asked[name] = exact(asked[name] * whole);
      }
    }
    plan.last += 1;
    const own = plan.last;
    const { done, refused } = await deeds.post("/api/cure-plans", asked);
    if (own !== plan.last) {
      return;
    }
    if (refused) {
      deeds.tell(form, refused);
      return;
    }
    if (!done) {
      // Without an answer, what stands there is of an earlier weight.
      shown.hidden = true;
      form.querySelector("[data-wrong]").hidden = true;
      return;
    }
    plan.show(form, shown, done);
  },

  show(form, shown, done) {
    const written = (name) => shown.querySelectorAll(`[data-figure="${name}"]`);
    for (const [name, role] of [["curing_salt_grams", "curing-salt"], ["salt_grams", "salt"], ["sugar_grams", "sugar"]]) {
      written(name).forEach((at) => { at.textContent = weights.small(done[name]); at.closest("li").hidden = done[name] === 0; });
      const part = form.querySelector(`[data-role="${role}"]`);
      if (part) {
        pot.fill(part, done[name]);
      }
    }
    written("nitrite_ppm").forEach((at) => { at.textContent = weights.written(done.nitrite_ppm, 0); });
    written("nitrate_ppm").forEach((at) => { at.textContent = weights.written(done.nitrate_ppm, 0); at.closest("li").hidden = done.nitrate_ppm === 0; });
    written("salt_percent").forEach((at) => { at.textContent = weights.written(done.salt_percent, 2); });
    const line = ({ says }) => Object.assign(document.createElement("li"), { textContent: says });
    shown.querySelector("[data-findings]").replaceChildren(...done.findings.map(line));
    // What is wrong stands at the button that records it, too.
    const wrong = done.findings.filter(({ gravity }) => gravity !== "note");
    const near = form.querySelector("[data-wrong]");
    near.hidden = wrong.length === 0;
    near.querySelector("ul").replaceChildren(...wrong.map(line));
    shown.querySelector("[data-caution]").textContent = done.caution;
    shown.classList.toggle("warn", !done.allowed);
    shown.hidden = false;
    bench.follow(form);
    deeds.sentence(form);
  },
};

// Readings as a curve, with what must be reached.
const heat = {
  // The figures of the axis: whole steps, at most six of them.
  degrees(low, high) {
    const step = [1, 2, 5, 10, 20, 50, 100].find((one) => (high - low) / one <= 5) || 200;
    const first = Math.ceil(low / step) * step;
    return Array.from({ length: Math.floor((high - first) / step) + 1 }, (_, nth) => first + nth * step);
  },

  // The kitchen's hour of a moment.
  clock(form, moment) {
    const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)/.exec(form.dataset.offset);
    const ahead = (Number(hours) * 60 + Number(minutes)) * (sign === "-" ? -60000 : 60000);
    return waiting.hour(moment + ahead, { timeZone: "UTC" });
  },

  draw(form) {
    const svg = form.querySelector("[data-curve]");
    const rows = Array.from(form.querySelectorAll("[data-reading]")).map((row) => ({
      at: row.querySelector("[data-as=when]"),
      degrees: deeds.figure(row.querySelector("[data-degrees]").value || "x"),
    })).filter(({ at, degrees }) => at.value !== "" && !Number.isNaN(degrees));
    const points = rows.map(({ at, degrees }) => [Date.parse(bench.moment(form, at)), degrees]);
    svg.closest("figure").hidden = points.length < 2;
    if (points.length < 2) {
      return;
    }
    const edges = JSON.parse(svg.dataset.curve);
    const first = points[0][0];
    const last = Math.max(points.at(-1)[0], ...edges.map((edge) => first + (edge.minutes || 0) * 60000));
    const all = points.map(([, degrees]) => degrees).concat(edges.flatMap((edge) => [edge.from, edge.to]).filter((edge) => edge !== null && edge !== undefined));
    const [low, high] = [Math.min(...all), Math.max(...all)];
    const x = (at) => 50 + (at - first) * 330 / Math.max(last - first, 1);
    const y = (degrees) => 20 + (high - degrees) * 190 / Math.max(high - low, 1);
    const made = (name, fields, text) => {
      const element = document.createElementNS("http://www.w3.org/2000/svg", name);
      Object.entries(fields).forEach(([key, value]) => element.setAttribute(key, value));
      element.textContent = text ?? "";
      return element;
    };
    // Hours under the axis, as far as each has room.
    const hours = [];
    const hour = (at, text) => {
      const across = Math.min(Math.max(x(at), 62), 374);
      if (hours.every((one) => Math.abs(one - across) > 64)) {
        hours.push(across);
        drawn.push(made("text", { x: across, y: 240, "text-anchor": "middle" }, text));
      }
    };
    const drawn = [...heat.degrees(low, high).flatMap((degrees) => [
      made("path", { class: "grid", d: `M50 ${y(degrees)}H386` }),
      made("text", { x: 44, y: y(degrees) + 6, "text-anchor": "end" }, weights.written(degrees, 0)),
    ]), made("path", { class: "axes", d: "M50 20V210H386" }), made("text", { x: 56, y: 16 }, svg.dataset.sign)];
    const by_hours = [];
    for (const edge of edges) {
      const limit = (degrees) => {
        drawn.push(made("path", { class: "aim", d: `M50 ${y(degrees)}H386` }));
        // Where the last reading ends beside it, it is written at the other end of its line.
        const [at, read] = points.at(-1);
        const is_beside = x(at) > 250 && Math.abs(y(read) - y(degrees)) < 44;
        const stands = is_beside ? { x: 56, "text-anchor": "start" } : { x: 382, "text-anchor": "end" };
        drawn.push(made("text", { class: "b", y: y(degrees) - 6, ...stands }, `${weights.written(degrees, 1)} ${svg.dataset.sign}`));
      };
      limit(edge.to);
      if (edge.minutes) {
        // By then it must be there: counted from when it was last at the upper one.
        const upper = edge.from === null ? points[0] : points.filter(([, degrees]) => degrees >= edge.from).at(-1) || points[0];
        const by = upper[0] + edge.minutes * 60000;
        drawn.push(made("path", { class: "aim", d: `M${x(by)} 20V210` }));
        by_hours.push(by);
        drawn.push(made("path", { class: "gate", d: `M${x(by) - 9} ${y(edge.to)}l9 -9l9 9l-9 9z` }));
      }
    }
    drawn.push(made("polyline", { class: "own", points: points.map(([at, degrees]) => `${x(at)},${y(degrees)}`).join(" ") }));
    for (const [at, degrees] of points) {
      drawn.push(made("circle", { cx: x(at), cy: y(degrees), r: 7 }));
    }
    for (const [nth, { at, degrees }] of rows.entries()) {
      const [across, down] = [x(points[nth][0]), y(degrees)];
      drawn.push(made("path", { class: "tick", d: `M${across} 210v8` }));
      if (nth === 0 || nth === rows.length - 1) {
        // The last one stands before its dot only where the first does not stand there.
        const before = nth > 0 && across > 180;
        hour(points[nth][0], at.value);
        drawn.push(made("text", { class: "b", x: before ? across - 12 : across + 12, y: nth > 0 && !before ? down - 12 : down > 180 ? down - 14 : down + 24, "text-anchor": before ? "end" : "start" }, weights.written(degrees, 1)));
      }
    }
    for (const by of by_hours) {
      hour(by, heat.clock(form, by));
    }
    svg.replaceChildren(...drawn);
  },
};

document.addEventListener("input", (event) => {
  const field = event.target;
  const form = field.form;
  if (!form || !form.matches("form[data-deed]")) {
    return;
  }
  field.dataset.typed = "";
  if (field.matches("form[data-reads-now] [data-degrees]")) {
    const at = field.closest("[data-reading]").querySelector("[data-as=when]");
    at.value ||= bench.clock(form);
  }
  if (field.name === "_batch") {
    pot.share(form);
  }
  const row = field.closest("[data-row]");
  if (row && field.dataset.as === "weight" && field.value.trim() !== "") {
    row.querySelector("input[type=checkbox]").checked = true;
  }
  bench.follow(form);
  if (row && row.closest("[data-role]:not([data-role=''])") && form.elements._batch && weights.grams(form.elements._batch) > 0) {
    plan.ask(form, weights.grams(form.elements._batch));
  }
});

// Which of several goes in was said by hand: what was shared out is shared out again.
document.addEventListener("change", ({ target }) => {
  const part = target.matches("[data-row] input[type=checkbox]") && target.closest("[data-part]");
  if (part && target.form.elements._batch) {
    target.dataset.said = "";
    const row = target.closest("[data-row]").querySelector("[data-as=weight]");
    if (!target.checked) {
      delete row.dataset.typed;
      row.value = "";
    }
    pot.share(target.form);
  }
});

document.addEventListener("change", (event) => {
  const { leads } = event.target.dataset;
  const led = leads && event.target.form.elements[leads];
  const place = leads && event.target.selectedOptions[0].dataset.place;
  if (led && place !== undefined && led.dataset.typed === undefined) {
    led.value = place;
  }
});

document.addEventListener("keydown", (event) => {
  const field = event.target;
  const form = field.form;
  if (event.key !== "Enter" || !form || !field.matches("form[data-walk] input")) {
    return;
  }
  event.preventDefault();
  if (field.name === "_scan") {
    pot.scan(form, field);
  } else {
    bench.next(form, field);
  }
});

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  const form = button && button.form;
  if (!form) {
    return;
  }
  if (button.matches("[data-add]")) {
    const field = form.elements._scan;
    field.value.trim() === "" ? field.focus() : pot.scan(form, field);
  } else if (button.matches("[data-all-sides]")) {
    button.dataset.shown = "";
    bench.sides(form);
    form.querySelector("[name='animal.side']").focus();
  } else if (button.matches("[data-now]")) {
    const row = button.closest("[data-reading]");
    row.querySelector("[data-as=when]").value = bench.clock(form);
    row.querySelector("[data-degrees]").focus();
    bench.follow(form);
  } else if (button.matches("[data-boiled]")) {
    const on = button.getAttribute("aria-pressed") !== "true";
    button.setAttribute("aria-pressed", on);
    button.classList.toggle("chosen", on);
    form.elements["readings.boiled_minutes"].value = on ? button.dataset.boiled : "";
    bench.follow(form);
    deeds.sentence(form);
  } else if (button.matches("[data-more]")) {
    const hidden = form.querySelector("[data-reading][hidden]");
    if (hidden) {
      hidden.hidden = false;
      hidden.querySelector("input").focus();
    }
    button.hidden = !form.querySelector("[data-reading][hidden]");
  }
});

document.addEventListener("DOMContentLoaded", () => {
  bench.tick();
  window.setInterval(bench.tick, 20000);
  document.querySelectorAll("form[data-deed]").forEach((form) => {
    bench.follow(form);
    deeds.sentence(form);
  });
});
