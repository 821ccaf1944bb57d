// A code seen by the camera: by the browser itself where it can read codes, else by a photo that the service reads.
"use strict";

const camera = {
  stream: null,
  // The longest side of a photo that is sent: enough for the finest of our codes.
  largest: 1800,

  // What this device can do is offered; the rest stays hidden.
  offer() {
    const live = "BarcodeDetector" in window && navigator.mediaDevices;
    document.querySelectorAll("[data-camera]").forEach((button) => { button.hidden = !live; });
    document.querySelectorAll("[data-photo]").forEach((label) => { label.hidden = false; });
  },

  async open() {
    const finder = document.querySelector("[data-finder]");
    const video = finder.querySelector("video");
    try {
      camera.stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    } catch {
      // Not allowed here: a photo does as well.
      document.querySelector("[data-camera]").hidden = true;
      document.querySelector("[data-photo] input").focus();
      return;
    }
    finder.hidden = false;
    video.srcObject = camera.stream;
    await video.play();
    camera.look(video, new window.BarcodeDetector());
  },

  async look(video, detector) {
    while (camera.stream) {
      const seen = await detector.detect(video).catch(() => []);
      if (seen.length > 0 && camera.stream) {
        camera.close();
        counter.scanned(seen[0].rawValue);
        return;
      }
      await new Promise((done) => { setTimeout(done, 120); });
    }
  },

  close() {
    camera.stream?.getTracks().forEach((track) => track.stop());
    camera.stream = null;
    const finder = document.querySelector("[data-finder]");
    if (finder) {
      finder.hidden = true;
    }
  },

  // A photo as it is sent: no larger than it has to be, as the phone turned it.
  async small(file) {
    try {
      const whole = await createImageBitmap(file);
      const scale = Math.min(1, camera.largest / Math.max(whole.width, whole.height));
      const canvas = document.createElement("canvas");
      canvas.width = Math.round(whole.width * scale);
      canvas.height = Math.round(whole.height * scale);
      canvas.getContext("2d").drawImage(whole, 0, 0, canvas.width, canvas.height);
      const blob = await new Promise((done) => { canvas.toBlob(done, "image/jpeg", 0.9); });
      return blob ?? file;
    } catch {
      return file;
    }
  },

  async send(field) {
    const [file] = field.files;
    if (!file) {
      return;
    }
    const looking = document.querySelector("[data-looking]");
    looking.hidden = false;
    const photo = await camera.small(file);
    field.value = "";
    let problem;
    try {
      const response = await fetch("/api/photo-scans", {
        method: "POST",
        headers: { "Content-Type": photo.type },
        body: photo,
      });
      const answer = await response.json();
      looking.hidden = true;
      if (response.ok) {
        counter.scanned(answer.codes[0].code);
        return;
      }
      problem = answer;
    } catch {
      looking.hidden = true;
    }
    const by = document.createElement("form");
    document.querySelector("main").prepend(by);
    deeds.tell(by, problem);
    by.remove();
  },
};

document.addEventListener("click", (event) => {
  if (event.target.closest("[data-camera]")) {
    camera.open();
  } else if (event.target.closest("[data-close]")) {
    camera.close();
  }
});

document.addEventListener("change", (event) => {
  if (event.target.matches("[data-photo] input")) {
    camera.send(event.target);
  }
});
