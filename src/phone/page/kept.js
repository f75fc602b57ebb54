// What is kept on the phone: the survey in local storage, photographs in IndexedDB. The
// saved file is the notebook; this is only a net below it.
const KEY = "guardrule/1/survey", BEFORE = "guardrule/1/before";
const TAB = Math.random().toString(36).slice(2);

const kept = {
  fault: "", paused: false, saved: "", wrote: "", clash() {},
  read(key) {
    try { return JSON.parse(localStorage.getItem(key) || "null"); } catch (e) { if (e.name !== "SyntaxError") this.fault = e.name; return null; }
  },
  write(key, value) {
    const text = JSON.stringify(value);
    try { localStorage.setItem(key, text); this.fault = ""; } catch (e) { this.fault = e.name; return false; }
    if (key === KEY) this.wrote = text;
    return true;
  },
  // What another tab has written over it, if one has.
  other() {
    try { if (localStorage.getItem(KEY) === this.wrote) return null; } catch { return null; }
    return this.read(KEY);
  },
  // `survey` is everything; `base` and `typed` lead back to the same question.
  save(state) {
    if (this.paused) return false;
    // another tab may have written meanwhile: its answer is never written over unseen
    const there = this.other();
    if (there && there.tab !== TAB && this.saved && there.survey !== this.saved) { this.clash(there); return false; }
    const done = this.write(KEY, { ...state, tab: TAB });
    if (done) this.saved = state.survey;
    return done;
  },
  // The survey that stood here before another one took its place.
  setAside(state) { return !state || !state.survey || this.write(BEFORE, state); },
  says() {
    if (this.paused) return "<b>Not kept</b>: another tab has this survey. See above.";
    if (!this.fault) return "Kept on this phone. Nothing is sent.";
    const why = this.fault === "QuotaExceededError" ? "the store of this browser is full" : "this browser does not let it";
    return `<b>Not kept</b>: ${why}. Save the survey before you close this.`;
  },
};

const photos = {
  MOST: 200, SIDE: 1280, LARGEST: 60e6,
  all: new Map(), fault: "", db: null,
  async open() {
    try {
      this.db = await new Promise((done, fail) => {
        const wish = indexedDB.open("guardrule/1/photos", 1);
        wish.onupgradeneeded = () => wish.result.createObjectStore("photos");
        wish.onsuccess = () => done(wish.result);
        wish.onerror = () => fail(wish.error);
        wish.onblocked = () => fail(new Error("blocked"));
      });
      await new Promise((done, fail) => {
        const walk = this.db.transaction("photos").objectStore("photos").openCursor();
        walk.onsuccess = () => { const at = walk.result; if (!at) return done(); this.all.set(at.key, at.value); at.continue(); };
        walk.onerror = () => fail(walk.error);
      });
    } catch (e) { this.fault = (e && e.name) || "Error"; this.db = null; }
  },
  size() { let sum = 0; for (const blob of this.all.values()) sum += blob.size; return sum; },
  // Scaled down and written anew, so that place, camera and time in the file are gone.
  async scaled(file) {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, this.SIDE / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", 0.8));
    if (!blob) throw new Error("it cannot be written anew");
    return blob;
  },
  async add(file, place) {
    if (this.all.size >= this.MOST) throw new Error(`${this.MOST} photographs are here already; more find no room`);
    const blob = await this.scaled(file);
    if (this.size() + blob.size > this.LARGEST) throw new Error("the photographs together are too large; save the page and begin a new survey");
    const stem = (place || "railing").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40) || "railing";
    let number = 1;
    while (this.all.has(`${stem}-${number}.jpg`)) number++;
    const name = `${stem}-${number}.jpg`;
    this.all.set(name, blob);
    await this.put(store => store.put(blob, name));
    return name;
  },
  async drop(names) {
    for (const name of names) { this.all.delete(name); await this.put(store => store.delete(name)); }
  },
  put(change) {
    return new Promise(done => {
      if (!this.db) return done(false);
      try {
        const act = this.db.transaction("photos", "readwrite");
        change(act.objectStore("photos"));
        act.oncomplete = () => done(true);
        act.onerror = act.onabort = () => { this.fault = (act.error && act.error.name) || "Error"; done(false); };
      } catch (e) { this.fault = e.name; done(false); }
    });
  },
  // As the core takes it: JPEG in base64, and its size.
  async sent(name) {
    const blob = this.all.get(name);
    if (!blob) return null;
    const picture = await createImageBitmap(blob), size = { wide: picture.width, high: picture.height };
    picture.close();
    const url = await new Promise(done => { const read = new FileReader(); read.onload = () => done(read.result); read.onerror = () => done(""); read.readAsDataURL(blob); });
    return url ? { jpeg: url.slice(url.indexOf(",") + 1), ...size } : null;
  },
};

function download(text, name, type) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const a = Object.assign(document.createElement("a"), { href: url, download: name });
  document.body.append(a); a.click(); a.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}
