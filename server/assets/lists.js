// Forms over the kitchen's lists: one entry is one call, several ticked ones are several calls in order. What
// was refused is told where the form is, by deeds.js; no text stands here.
"use strict";

const lists = {
  // The codes that this page made of names.
  taken: new Set(),

  // Puts a value where its name says, or takes away what stands there.
  put(body, name, value) {
    const parts = name.split(".");
    const last = parts.pop();
    let at = body;
    for (const part of parts) {
      if (value === undefined && at[part] == null) {
        return;
      }
      at[part] ??= {};
      at = at[part];
    }
    if (value === undefined) {
      delete at[last];
    } else {
      at[last] = value;
    }
  },

  // What a field says; nothing where it is empty.
  value(field) {
    const text = field.value.trim();
    if (text === "") {
      return undefined;
    }
    switch (field.dataset.as) {
      case "yes": return text === "yes";
      case "figure": return deeds.figure(text);
      case "money": return Math.round(deeds.figure(text) * 100);
      case "lines": return text.split(/\s*\n\s*/).filter(Boolean);
      default: return text;
    }
  },

  // The entry as it is to be: as it was, with what the fields say.
  body(form) {
    const body = JSON.parse(form.dataset.body);
    const many = new Map();
    for (const field of form.elements) {
      if (!field.name || field.name.startsWith("_") || field.disabled) {
        continue;
      }
      if (field.type === "checkbox") {
        const chosen = many.get(field.name) || [];
        many.set(field.name, field.checked ? [...chosen, field.value] : chosen);
      } else if (field.type !== "radio" || field.checked) {
        lists.put(body, field.name, lists.value(field));
      }
    }
    many.forEach((chosen, name) => lists.put(body, name, chosen.length > 0 ? chosen : undefined));
    form.querySelectorAll("[data-rows]").forEach((rows) => lists.rows(rows, body));
    // A part of the entry without what makes it one is none: a keeping rule without days.
    for (const head of (form.dataset.heads || "").split(" ").filter(Boolean)) {
      const [part, name] = head.split(".");
      if (body[part] && body[part][name] === undefined) {
        delete body[part];
      }
    }
    if (form.dataset.coded !== undefined && body.code === undefined) {
      lists.taken.clear();
      body.code = lists.code(body.name ?? body.names?.en ?? body.names?.fr ?? "");
    }
    return lists.without(body);
  },

  // Parts in which nothing stands are none.
  without(body) {
    for (const [name, value] of Object.entries(body)) {
      if (value && typeof value === "object" && !Array.isArray(value) && Object.keys(lists.without(value)).length === 0) {
        delete body[name];
      }
    }
    return body;
  },

  // Rows of one thing each: the parts of a recipe. A row that lacks what it needs is none.
  rows(list, body) {
    const all = Array.from(list.querySelectorAll("[data-of-row]")).map((row) => {
      const one = {};
      row.querySelectorAll("[data-key]").forEach((field) => {
        const value = lists.value(field);
        if (value !== undefined) {
          one[field.dataset.key] = value;
        }
      });
      return one;
    });
    const needed = list.dataset.needed.split(" ");
    body[list.dataset.rows] = all.filter((one) => needed.every((key) => one[key] !== undefined));
  },

  async call(method, path, body, version) {
    const headers = { "Content-Type": "application/json", "Accept-Language": document.documentElement.lang };
    if (version) {
      headers["If-Match"] = `"v${version}"`;
    }
    try {
      const response = await fetch(path, { method, headers, body: JSON.stringify(body) });
      const answer = response.status === 204 ? {} : await response.json();
      return response.ok ? { done: answer } : { refused: answer };
    } catch {
      return { away: true };
    }
  },

  async send(form) {
    if (form.dataset.busy) {
      return;
    }
    form.dataset.busy = "yes";
    const { method, call, version } = form.dataset;
    const body = lists.body(form);
    const { done, refused, away } = await lists.call(method, call, body, version);
    delete form.dataset.busy;
    if (form.dataset.alters) {
      await lists.anew(form.dataset.alters);
    }
    form.closest("[data-printer]")?.dispatchEvent(new Event("tried"));
    if (refused || away) {
      deeds.tell(form, refused);
      return;
    }
    sessionStorage.setItem("warnings", JSON.stringify((done.warnings || []).map((one) => one.says)));
    if (done[form.dataset.show]) {
      // What was refused before is over.
      deeds.quiet();
      lists.show(form, done);
      return;
    }
    const then = new URL(form.dataset.then, window.location.origin);
    // Whoever was led here for something new finds it chosen where they come back to.
    if (form.dataset.toldAs) {
      then.searchParams.set(form.dataset.toldAs, body.code);
      lists.carry(form.dataset.then, then.href, { [form.dataset.toldAs]: body.code });
    }
    window.location.assign(then.href);
  },

  // What was typed there stands there again, though the page is asked for with something new.
  carry(from, to, told) {
    try {
      const draft = JSON.parse(window.localStorage.getItem(draftOf(from)));
      if (draft) {
        window.localStorage.removeItem(draftOf(from));
        window.localStorage.setItem(draftOf(to), JSON.stringify({ ...draft, told }));
      }
    } catch {
      // The device keeps nothing: the page is as it was before.
    }
  },

  // Parts of the page as they are now, where a refusal alters them, too: the ticks above it.
  async anew(css) {
    try {
      const page = await (await fetch(window.location.href)).text();
      const now = new DOMParser().parseFromString(page, "text/html").querySelectorAll(css);
      document.querySelectorAll(css).forEach((part, nth) => { part.replaceWith(now[nth]); });
    } catch {
      // Nobody answers: it stays as it is.
    }
  },

  // What is told once, and stays on the page: a word that signs somebody in.
  show(form, done) {
    const shown = form.querySelector("[data-shown]");
    shown.hidden = false;
    shown.querySelector("[data-told-once]").textContent = done[form.dataset.show];
    shown.querySelectorAll("[data-given]").forEach((part) => {
      part.textContent = form.elements[part.dataset.given].value;
      const line = document.createElement("li");
      const roles = Array.from(form.querySelectorAll("input[name=roles]:checked"), (tick) => tick.nextSibling.textContent.trim());
      line.textContent = roles.length > 0 ? `${part.textContent} (${roles.join(", ")})` : part.textContent;
      document.querySelector("[data-so-far]")?.append(line);
    });
    form.reset();
    shown.scrollIntoView({ block: "center" });
  },

  // Everything that is ticked, one call after the other: first all entries, then what is made of them. One
  // that is refused is told, and nothing after it is sent.
  async each(form) {
    if (form.dataset.busy) {
      return;
    }
    form.dataset.busy = "yes";
    const ticked = Array.from(form.querySelectorAll("input[data-calls]:checked:not(:disabled)"));
    lists.taken = new Set(ticked.flatMap((tick) => JSON.parse(tick.dataset.calls).map(([, body]) => body.code)));
    const calls = ticked.flatMap((tick) => JSON.parse(tick.dataset.calls).map(([path, body]) => ({ path, body: lists.named(tick, body) })));
    const order = (form.dataset.order || "").split(" ");
    calls.sort((one, other) => order.indexOf(one.path) - order.indexOf(other.path));
    const bar = form.querySelector("progress");
    const going = form.querySelector("[data-going]");
    for (const [nth, { path, body }] of calls.entries()) {
      if (bar) {
        bar.hidden = false;
        bar.max = calls.length;
        bar.value = nth;
      }
      if (going) {
        going.hidden = false;
        going.textContent = going.dataset.going.replace("[nth]", nth + 1).replace("[all]", calls.length);
      }
      const { refused, away } = await lists.call("POST", path, body);
      if (refused || away) {
        delete form.dataset.busy;
        deeds.tell(form, refused);
        return;
      }
    }
    // The page that comes then says how many they were, where it does.
    const then = new URL(form.dataset.then, window.location.origin);
    if (form.dataset.tells) {
      then.searchParams.set(form.dataset.tells, ticked.length);
    }
    window.location.assign(then.href);
  },

  // A name may be written over before it is taken.
  named(tick, body) {
    const line = tick.closest("[data-pick]");
    const name = line?.querySelector("input[data-name]")?.value.trim();
    if (tick.dataset.own !== undefined) {
      return { code: lists.code(name), name, kind: line.querySelector("[data-kind]").value };
    }
    return name && body.name ? { ...body, name } : body;
  },

  // A code made of a name: small letters and hyphens, another than those that are sent with it.
  code(name) {
    const plain = name.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "one";
    let code = plain.slice(0, 30);
    for (let nth = 2; lists.taken.has(code); nth += 1) {
      code = `${plain.slice(0, 26)}-${nth}`;
    }
    lists.taken.add(code);
    return code;
  },

  // One line more, for a place of their own.
  more(button) {
    const form = button.closest("form");
    const line = form.querySelector("template[data-more]").content.cloneNode(true).firstElementChild;
    form.querySelector("[data-more-here]").before(line);
    line.querySelector("[data-name]").focus();
  },

  // What a ticked thing is made or cut of is ticked with it; unticked, it stays. What was ticked so.
  needs(form, tick) {
    const ticked = [];
    if (tick.checked) {
      for (const code of (tick.dataset.needs || "").split(" ").filter(Boolean)) {
        const other = form.querySelector(`input[data-code="${code}"]`);
        if (other && !other.checked && !other.disabled) {
          other.checked = true;
          ticked.push(other, ...lists.needs(form, other));
        }
      }
    }
    return ticked;
  },

  // What is ticked and names a thing in its recipe: without that thing it cannot be listed.
  users(form, code) {
    const ticked = Array.from(form.querySelectorAll("input[data-parts]:checked:not(:disabled)"));
    return ticked.filter((tick) => tick.dataset.parts.split(" ").includes(code));
  },

  // What something ticked is made of stays ticked, and its own line says for what.
  keeps(form, tick) {
    const by = tick.checked ? [] : lists.users(form, tick.dataset.code);
    tick.closest("label").querySelector("[data-for]")?.remove();
    if (by.length === 0) {
      return;
    }
    tick.checked = true;
    const word = document.createElement("small");
    word.dataset.for = "";
    word.setAttribute("role", "status");
    word.className = "today";
    word.textContent = form.dataset.kept.replace("[names]", by.map(lists.name).join(" · "));
    tick.closest("label").querySelector("span").append(word);
  },

  name(tick) {
    return tick.closest("label").querySelector("span").firstChild.textContent.trim();
  },

  // Most of it lies in groups that are folded: it is named where the button is.
  with(form, ticked) {
    const told = form.querySelector("[data-with]");
    if (told) {
      const names = ticked.map(lists.name);
      told.hidden = names.length === 0;
      told.textContent = told.dataset.with.replace("[names]", names.join(" · "));
    }
  },

  count(form) {
    form.querySelectorAll("[data-count]").forEach((shown) => {
      // Within a group that is folded it is of that group.
      const of = shown.closest("[data-group]") ?? form;
      shown.textContent = of.querySelectorAll("input[data-calls]:checked:not(:disabled)").length;
    });
  },

  // A table is tried, and then taken over: the same bytes.
  async table(form, isTried) {
    const file = form.elements._file.files[0];
    const text = file ? await file.arrayBuffer() : form.elements._text.value;
    const headers = { "Content-Type": "text/csv", "Accept-Language": document.documentElement.lang };
    try {
      const response = await fetch(`${form.dataset.table}${isTried ? "?try=true" : ""}`, { method: "POST", headers, body: text });
      const answer = await response.json();
      if (!response.ok) {
        form.querySelector("[data-report]").hidden = true;
        deeds.tell(form, answer);
      } else if (isTried) {
        document.querySelector("[data-told]").replaceChildren();
        lists.report(form, answer);
      } else {
        window.location.assign(form.dataset.then);
      }
    } catch {
      deeds.tell(form);
    }
  },

  report(form, answer) {
    const report = form.querySelector("[data-report]");
    report.hidden = false;
    for (const what of ["new", "changed", "same", "wrong"]) {
      report.querySelector(`[data-sum=${what}]`).textContent = answer[what];
    }
    const rows = answer.lines.filter((line) => line.what !== "same").map((line) => {
      const row = form.querySelector("template[data-row]").content.cloneNode(true).firstElementChild;
      row.classList.toggle("has", line.what === "wrong");
      const cells = [line.line, line.code, line.says, line.columns.join(", "), line.detail || ""];
      row.querySelectorAll("td").forEach((cell, nth) => {
        cell.textContent = cells[nth];
        cell.classList.toggle("none", cells[nth] === "");
      });
      return row;
    });
    report.querySelector("tbody").replaceChildren(...rows);
    const take = report.querySelector("[data-take]");
    take.hidden = answer.wrong > 0 || answer.new + answer.changed === 0;
    report.scrollIntoView({ block: "start" });
  },
};

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (form.matches("form[data-call]")) {
    event.preventDefault();
    lists.send(form);
  } else if (form.matches("form[data-order]")) {
    event.preventDefault();
    lists.each(form);
  } else if (form.matches("form[data-table]")) {
    event.preventDefault();
    lists.table(form, event.submitter?.dataset.take === undefined);
  }
});

document.addEventListener("change", (event) => {
  const field = event.target;
  const form = field.form;
  if (field.matches("input[data-all]")) {
    const group = field.closest("[data-group]");
    const all = Array.from(group.querySelectorAll("input[data-calls]:not(:disabled)"));
    all.forEach((tick) => { tick.checked = field.checked; });
    all.forEach((tick) => lists.keeps(form, tick));
    lists.with(form, all.flatMap((tick) => lists.needs(form, tick)));
  } else if (field.matches("input[data-calls]")) {
    lists.keeps(form, field);
    lists.with(form, lists.needs(form, field));
  }
  if (form?.matches("form[data-order]")) {
    lists.count(form);
  }
});

document.querySelectorAll("form[data-order]").forEach(lists.count);

document.addEventListener("click", (event) => {
  const button = event.target.closest?.("[data-add-more]");
  if (button) {
    lists.more(button);
  }
});

// A line of their own is ticked by its name.
document.addEventListener("input", (event) => {
  const own = event.target.matches("[data-name]") && event.target.closest("[data-pick]").querySelector("[data-own]");
  if (own) {
    own.checked = event.target.value.trim() !== "";
    lists.count(own.form);
  }
});

// Whose law it is says which units and money are usual there; whoever wants others chooses them afterwards.
const usual = (choice) => Object.entries(JSON.parse(choice.dataset.usual)).forEach(([name, value]) => {
  choice.form.elements[name].value = value;
});
document.querySelectorAll("input[data-usual]:checked").forEach(usual);
document.addEventListener("change", (event) => {
  if (event.target.matches("input[data-usual]")) {
    usual(event.target);
  }
});

// The clock of this device says where the kitchen is, until somebody says otherwise; one on UTC was never told itself.
document.querySelectorAll("select[data-zone]").forEach((field) => {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (!/UTC|GMT|^Etc/.test(here) && Array.from(field.options).some((one) => one.value === here)) {
    field.value = here;
  }
});
