// The page of what waits on this device: each thing with its slip, what was refused with what to do, what went through
// with its new code. No text stands here.
"use strict";

const list = {
  box: document.querySelector("[data-waiting]"),
  opened: Date.now(),

  row(state) {
    return document.querySelector(`template[data-row="${state}"]`).content.cloneNode(true).firstElementChild;
  },

  // The kitchen's hour of a moment of this device: its clock or its zone may be another. A page that this device kept
  // tells the moment at which it was kept.
  hour(moment, more) {
    const { now, zone } = list.box.dataset;
    const ahead = Number(now) - (Date.parse(document.querySelector("[data-stale]").dataset.stale) || list.opened);
    return waiting.hour(moment + ahead, { timeZone: zone || undefined, ...more });
  },

  // What all rows have: the slip, what it is, who did it and when.
  fill(element, [first]) {
    const at = list.hour(first.kept);
    element.querySelector("[data-what]").textContent = first.says;
    element.querySelector("[data-who-when]").textContent = [first.by, at].filter(Boolean).join(", ");
    element.querySelectorAll("[data-says], [data-makes]").forEach((text) => {
      text.textContent = (text.dataset.says ?? text.textContent).replace("[slip]", first.slip);
    });
    element.querySelectorAll("[data-slip]").forEach((text) => { text.textContent = first.slip; });
    element.querySelectorAll("[data-makes]").forEach((text) => { text.hidden = !first.makes; });
    return element;
  },

  waits(rows) {
    const element = list.fill(list.row("waits"), rows);
    element.querySelector("[data-take-out]").addEventListener("click", () => waiting.takeOut(rows[0].press, rows[0].undo));
    return element;
  },

  refused(row) {
    const element = list.fill(list.row("refused"), [row]);
    const { problem } = row;
    element.querySelector("[data-title]").textContent = problem.title ? `${problem.title}.` : "";
    element.querySelector("[data-detail]").textContent = problem.detail ?? "";
    const happened = element.querySelector("[data-happened]");
    happened.hidden = !problem.may_be_told;
    element.querySelector("[data-as-it-happened]").addEventListener("click", () => {
      const note = happened.querySelector("[data-note]");
      if (note.value.trim() === "") {
        note.setAttribute("aria-invalid", "true");
        note.focus();
        return;
      }
      list.again({ ...row, body: { ...row.body, as_it_happened: true, note: note.value.trim() } });
    });
    element.querySelector("[data-again]").addEventListener("click", () => list.again(row));
    element.querySelector("[data-drop]").addEventListener("click", async () => {
      await waiting.drop([row]);
      waiting.render();
    });
    const lot = row.body.lot ?? row.body.inputs?.[0]?.lot;
    const thing = element.querySelector("[data-thing]");
    thing.hidden = !lot;
    thing.href = lot ? `/lots/${lot.split("/")[0]}` : "#";
    return element;
  },

  // A refused id stays free: the same goes again.
  async again(row) {
    await waiting.save({ ...row, state: "waits", problem: undefined });
    await waiting.flush();
    waiting.render();
  },

  done(rows) {
    const element = list.fill(list.row("done"), rows);
    const codes = rows.flatMap((row) => row.made ?? []);
    element.querySelector("[data-codes]").replaceChildren(...codes.map(({ code, shown }) => {
      const link = document.querySelector("template[data-code]").content.cloneNode(true).firstElementChild;
      link.href = `/lots/${code}`;
      link.textContent = shown;
      return link;
    }));
    const labels = element.querySelector("[data-labels]");
    labels.hidden = !rows[0].labels;
    labels.href = rows[0].labels ?? "#";
    element.querySelector("[data-seen]").addEventListener("click", async () => {
      await waiting.drop(rows);
      waiting.render();
    });
    return element;
  },

  show(rows) {
    // Who is typing a note goes on.
    if (list.box.contains(document.activeElement) && document.activeElement.matches("input")) {
      return;
    }
    const waits = waiting.presses(rows, "waits");
    // No button moves under a finger while nothing has changed.
    const now = JSON.stringify(rows);
    if (now === list.was) {
      return;
    }
    list.was = now;
    const shown = [
      ...rows.filter((row) => row.state === "refused").map(list.refused),
      ...waits.map(list.waits),
      ...waiting.presses(rows, "done").map(list.done),
    ];
    list.box.replaceChildren(...shown);
    document.querySelector("[data-nothing]").hidden = shown.length > 0;
    document.querySelector("[data-try-line]").hidden = waits.length === 0;
    if (waits.length === 0) {
      list.end("clear");
    }
  },

  end(how) {
    document.querySelector("[data-no-line]").hidden = how !== "away";
    document.querySelector("[data-sign-in]").hidden = how !== "held";
    document.querySelector("[data-unread]").hidden = how !== "unread";
    if (how === "unread") {
      list.was = undefined;
      document.querySelector("[data-nothing]").hidden = true;
    } else if (list.was === undefined) {
      waiting.render().catch(() => {});
    }
  },
};

document.addEventListener("waiting", (event) => list.show(event.detail));
document.querySelector("[data-try-line]").addEventListener("click", async () => {
  const end = await waiting.flush();
  list.end(end);
  // Whoever tried is told that it was tried.
  const told = document.querySelector("[data-tried]");
  const at = list.hour(Date.now(), { second: "2-digit" });
  told.hidden = end !== "away";
  told.textContent = told.dataset.tried.replace("[time]", at);
});
document.addEventListener("DOMContentLoaded", async () => list.end(await waiting.flush()));
setInterval(async () => list.end(await waiting.flush()), 5000);
