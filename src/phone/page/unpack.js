"use strict";
// Unpacks an .lzma file, after the LZMA specification of Igor Pavlov (public domain, 2015): a range
// coder over bits whose chances are learnt, literals, and copies of what was written before. A
// fifth smaller than gzip on a WebAssembly module. In slices, so that the page answers a finger
// meanwhile: `pause` is awaited between them.
const SLICE = 65536;
async function unpack(raw, pause) {
  let at = 13, range = 0xffffffff, code = 0, done = 0, state = 0, rep0 = 0, rep1 = 0, rep2 = 0, rep3 = 0;
  const lc = raw[0] % 9, lp = Math.floor(raw[0] / 9) % 5, pb = Math.floor(raw[0] / 45);
  let size = 0;
  for (let i = 7; i >= 0; i--) size = size * 256 + raw[5 + i];
  const out = new Uint8Array(size), chances = count => new Uint16Array(count).fill(1024);
  const literal = chances(0x300 << (lc + lp)), isMatch = chances(192), isRep = chances(12), isRep0 = chances(12), isRep1 = chances(12), isRep2 = chances(12), isLong = chances(192);
  const slots = chances(256), special = chances(128), align = chances(16);
  const lengths = () => ({ choice: chances(2), low: chances(128), mid: chances(128), high: chances(256) }), len = lengths(), repLen = lengths();
  at++;                                                    // the first byte of the coder is nothing
  for (let i = 0; i < 4; i++) code = (code << 8 | raw[at++]) >>> 0;
  const bit = (model, i) => {
    const chance = model[i], bound = (range >>> 11) * chance;
    let got;
    if (code < bound) { range = bound; model[i] = chance + (2048 - chance >>> 5); got = 0; }
    else { range = range - bound >>> 0; code = code - bound >>> 0; model[i] = chance - (chance >>> 5); got = 1; }
    if (range < 0x1000000) { range = range << 8 >>> 0; code = (code << 8 | raw[at++]) >>> 0; }
    return got;
  };
  const tree = (model, from, bits) => { let m = 1; for (let i = 0; i < bits; i++) m = m << 1 | bit(model, from + m); return m - (1 << bits); };
  const back = (model, from, bits) => { let m = 1, sum = 0; for (let i = 0; i < bits; i++) { const b = bit(model, from + m); m = m << 1 | b; sum |= b << i; } return sum; };
  const direct = bits => {
    let sum = 0;
    while (bits-- > 0) {
      range >>>= 1;
      const b = code >= range ? 1 : 0;
      if (b) code = code - range >>> 0;
      sum = sum << 1 | b;
      if (range < 0x1000000) { range = range << 8 >>> 0; code = (code << 8 | raw[at++]) >>> 0; }
    }
    return sum;
  };
  const length = (model, pos) => !bit(model.choice, 0) ? tree(model.low, pos << 3, 3) : !bit(model.choice, 1) ? 8 + tree(model.mid, pos << 3, 3) : 16 + tree(model.high, 0, 8);
  const mask = (1 << pb) - 1, literals = (1 << lp) - 1;
  const slice = until => {
    while (done < until) {
      const pos = done & mask;
      if (!bit(isMatch, (state << 4) + pos)) {
        const before = done ? out[done - 1] : 0, from = 0x300 * (((done & literals) << lc) + (before >>> 8 - lc));
        let sign = 1;
        if (state >= 7) {
          let near = out[done - rep0 - 1];
          do { const high = near >>> 7 & 1; near <<= 1; const b = bit(literal, from + (1 + high << 8) + sign); sign = sign << 1 | b; if (high !== b) break; } while (sign < 0x100);
        }
        while (sign < 0x100) sign = sign << 1 | bit(literal, from + sign);
        out[done++] = sign;
        state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
        continue;
      }
      let count;
      if (bit(isRep, state)) {
        if (!bit(isRep0, state)) {
          if (!bit(isLong, (state << 4) + pos)) { state = state < 7 ? 9 : 11; out[done] = out[done - rep0 - 1]; done++; continue; }
        } else {
          let far;
          if (!bit(isRep1, state)) far = rep1;
          else { if (!bit(isRep2, state)) far = rep2; else { far = rep3; rep3 = rep2; } rep2 = rep1; }
          rep1 = rep0; rep0 = far;
        }
        count = length(repLen, pos);
        state = state < 7 ? 8 : 11;
      } else {
        rep3 = rep2; rep2 = rep1; rep1 = rep0;
        count = length(len, pos);
        state = state < 7 ? 7 : 10;
        const slot = tree(slots, (count < 4 ? count : 3) << 6, 6);
        if (slot < 4) rep0 = slot;
        else {
          const bits = (slot >>> 1) - 1;
          rep0 = (2 | slot & 1) << bits;
          rep0 += slot < 14 ? back(special, rep0 - slot, bits) : (direct(bits - 4) << 4) + back(align, 0, 4);
        }
      }
      if (rep0 < 0 || rep0 >= done) throw new Error("what is packed inside the file is damaged");
      for (count += 2; count > 0 && done < size; count--, done++) out[done] = out[done - rep0 - 1];
    }
  };
  while (done < size) { slice(Math.min(size, done + SLICE)); await pause(); }
  return out;
}
