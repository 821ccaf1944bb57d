// A paper put to a deed: a photo or a file, sent as it is. The id is made before it is sent, so that the same paper
// sent twice is kept once. It does not wait on the device: what is large goes when somebody answers.
"use strict";

const papers = {
  // What the service takes; a photo of another form becomes a JPEG first.
  taken: ["application/pdf", "image/jpeg", "image/png", "text/plain", "text/csv"],
  largest: 10 * 1024 * 1024,

  async send(form, field) {
    const [file] = field.files;
    if (!file || form.dataset.busy) {
      return;
    }
    form.dataset.busy = "yes";
    const sending = form.querySelector("[data-sending]");
    sending.hidden = false;
    const { body, kind } = await papers.fitting(file);
    const wish = [file.name, file.size, file.lastModified, deeds.chosen(form, "of"), deeds.chosen(form, "kind")].join("/");
    if (form.dataset.wish !== wish) {
      form.dataset.wish = wish;
      form.dataset.id = deeds.id();
    }
    const asked = new URLSearchParams({ id: form.dataset.id, of: deeds.chosen(form, "of"), kind: deeds.chosen(form, "kind") });
    const name = deeds.chosen(form, "name").trim();
    if (name) {
      asked.set("name", name);
    }
    const { status, answer } = await waiting.ask(`${form.dataset.paper}?${asked}`, {
      method: "POST",
      headers: { "Content-Type": kind, "Accept-Language": document.documentElement.lang },
      body,
    }, 60_000);
    sending.hidden = true;
    delete form.dataset.busy;
    field.value = "";
    if (status === 200 || status === 201) {
      const then = new URL(form.dataset.then, window.location.origin);
      then.searchParams.set("did", answer.id);
      window.location.assign(then.href);
      return;
    }
    deeds.tell(form, status === 0 ? undefined : answer);
  },

  // As it is, if it may go so; a photo that is too large, or in a form of the telephone's own, is drawn anew.
  async fitting(file) {
    const kind = papers.kind(file);
    if (papers.taken.includes(kind) && file.size <= papers.largest) {
      return { body: file, kind };
    }
    try {
      const whole = await createImageBitmap(file);
      const scale = Math.min(1, 3000 / Math.max(whole.width, whole.height));
      const canvas = document.createElement("canvas");
      canvas.width = Math.round(whole.width * scale);
      canvas.height = Math.round(whole.height * scale);
      canvas.getContext("2d").drawImage(whole, 0, 0, canvas.width, canvas.height);
      const drawn = await new Promise((done) => { canvas.toBlob(done, "image/jpeg", 0.85); });
      return { body: drawn ?? file, kind: drawn ? "image/jpeg" : kind };
    } catch {
      return { body: file, kind };
    }
  },

  // What it says that it is: spreadsheets call a table by other names.
  kind(file) {
    const type = file.type.split(";")[0];
    return /\.(csv|txt)$/i.test(file.name) && !type.startsWith("image/") ? "text/plain" : type || "text/plain";
  },
};

document.addEventListener("change", (event) => {
  if (event.target.matches("form[data-paper] [data-file]")) {
    papers.send(event.target.form, event.target);
  }
});
document.addEventListener("submit", (event) => {
  if (event.target.matches("form[data-paper]")) {
    event.preventDefault();
  }
});
