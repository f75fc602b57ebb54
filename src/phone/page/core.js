// The core: a WebAssembly module that wants nothing from outside. JSON in, JSON out.
const times = { start: performance.now() };
const since = () => Math.round((performance.now() - times.start) * 10) / 10;

// Thirteen bits in two letters, the least first; the letters are all that are printed but & < >.
function bytesOf(block) {
  const text = block.textContent, raw = new Uint8Array(Number(block.dataset.bytes)), place = new Uint8Array(128);
  for (let c = 33, n = 0; c < 127; c++) if (c !== 38 && c !== 60 && c !== 62) place[c] = n++;
  let kept = 0, bits = 0, at = 0;
  for (let i = 0; i + 1 < text.length; i += 2) {
    kept |= (place[text.charCodeAt(i)] * 91 + place[text.charCodeAt(i + 1)]) << bits;
    for (bits += 13; bits >= 8; bits -= 8) { raw[at++] = kept & 255; kept >>>= 8; }
  }
  block.remove();                                                      // a megabyte that is not needed any more
  return raw;
}

// Lets a finger in, without the rest that a timer takes.
const breath = () => new Promise(done => { const { port1, port2 } = new MessageChannel(); port1.onmessage = () => { port1.close(); done(); }; port2.postMessage(0); });

class Core {
  static async open(block) {
    if (typeof WebAssembly !== "object") throw new Error("it has no WebAssembly");
    const packed = bytesOf(block);
    times.decoded = since();
    const bytes = await unpack(packed, breath);
    times.unpacked = since();
    const core = new Core();
    core.module = await WebAssembly.compile(bytes);
    times.compiled = since();
    core.start();
    return core;
  }
  start() { this.wasm = new WebAssembly.Instance(this.module, {}).exports; }
  // An answer, or { error }, or { trap } after which a fresh instance stands ready.
  ask(request) {
    const bytes = new TextEncoder().encode(JSON.stringify(request)), w = this.wasm;
    const read = n => new TextDecoder().decode(new Uint8Array(w.memory.buffer, w.output(), n));
    try {
      const at = w.input(bytes.length);                                // may move the memory: the view comes after
      new Uint8Array(w.memory.buffer, at, bytes.length).set(bytes);
      return JSON.parse(read(w.call()));
    } catch (fault) {
      let message = String(fault);
      try { message = read(w.trouble()) || message; } catch { /* the instance is beyond reading */ }
      this.start();                                                    // a trapped instance is never used again
      return { trap: message };
    }
  }
}
