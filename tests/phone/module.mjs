// The module as a page uses it, for Node: no browser, no package.
import { readFileSync } from "node:fs";

export class Module {
  constructor(path) {
    this.compiled = new WebAssembly.Module(readFileSync(path));
    const wanted = WebAssembly.Module.imports(this.compiled);
    if (wanted.length) throw new Error(`the module wants something from outside: ${JSON.stringify(wanted)}`);
    this.start();
  }
  start() { this.wasm = new WebAssembly.Instance(this.compiled, {}).exports; }
  ask(request) {
    const bytes = Buffer.from(JSON.stringify(request)), w = this.wasm;
    const at = w.input(bytes.length);
    new Uint8Array(w.memory.buffer, at, bytes.length).set(bytes);
    const length = w.call();
    return JSON.parse(Buffer.from(w.memory.buffer, w.output(), length).toString());
  }
  get pages() { return this.wasm.memory.buffer.byteLength / 65536; }
}
