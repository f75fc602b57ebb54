"use strict";
// Unpacks an .lzma file, after the LZMA specification of Igor Pavlov (public domain, 2015): a range
// coder over bits whose chances are learnt, literals, and copies of what was written before. A
// fifth smaller than gzip on a WebAssembly module. In slices, so that the page answers a finger
// meanwhile: `pause` is awaited between them.
const SLICE = 65536;
async function unpack(raw, pause) {
  const lc = raw[0] % 9, lp = Math.floor(raw[0] / 9) % 5, pb = Math.floor(raw[0] / 45);
  let size = 0;
  for (let i = 7; i >= 0; i--) size = size * 256 + raw[5 + i];
  // all chances in one table, one kind behind the other
  const IS_MATCH = 0, IS_REP = 192, IS_REP0 = 204, IS_REP1 = 216, IS_REP2 = 228, IS_LONG = 240, SLOTS = 432, SPECIAL = 688, ALIGN = 816, LEN = 832, REP_LEN = 1346, LITERAL = 1860;
  const p = new Uint16Array(LITERAL + (0x300 << lc + lp)).fill(1024), out = new Uint8Array(size);
  const mask = (1 << pb) - 1, literals = (1 << lp) - 1;
  // range, code, and how far it has read: in a table, since a number that a function shares with
  // another one is made anew at each change; the two loops that take most bits have copies
  const s = new Uint32Array(3);
  s[0] = 0xffffffff; s[2] = 18;                            // the first byte of the coder is nothing
  for (let i = 14; i < 18; i++) s[1] = s[1] << 8 | raw[i];
  const bit = i => {
    const chance = p[i], bound = Math.imul(s[0] >>> 11, chance) >>> 0;
    let got;
    if (s[1] < bound) { s[0] = bound; p[i] = chance + (2048 - chance >>> 5); got = 0; }
    else { s[0] -= bound; s[1] -= bound; p[i] = chance - (chance >>> 5); got = 1; }
    if (s[0] < 0x1000000) { s[0] <<= 8; s[1] = s[1] << 8 | raw[s[2]++]; }
    return got;
  };
  // `bits` bits, the highest first, with a chance for each beginning
  const tree = (from, m, until) => {
    let range = s[0], code = s[1], at = s[2];
    while (m < until) {
      const i = from + m, chance = p[i], bound = Math.imul(range >>> 11, chance) >>> 0;
      if (code < bound) { range = bound; p[i] = chance + (2048 - chance >>> 5); m <<= 1; }
      else { range = range - bound >>> 0; code = code - bound >>> 0; p[i] = chance - (chance >>> 5); m = m << 1 | 1; }
      if (range < 0x1000000) { range = range << 8 >>> 0; code = (code << 8 | raw[at++]) >>> 0; }
    }
    s[0] = range; s[1] = code; s[2] = at;
    return m;
  };
  const back = (from, bits) => { let m = 1, sum = 0; for (let i = 0; i < bits; i++) { const b = bit(from + m); m = m << 1 | b; sum |= b << i; } return sum; };
  const direct = bits => {
    let sum = 0;
    while (bits-- > 0) {
      s[0] >>>= 1;
      const b = s[1] >= s[0] ? 1 : 0;
      if (b) s[1] -= s[0];
      sum = sum << 1 | b;
      if (s[0] < 0x1000000) { s[0] <<= 8; s[1] = s[1] << 8 | raw[s[2]++]; }
    }
    return sum;
  };
  const length = (at, pos) => !bit(at) ? tree(at + 2 + (pos << 3), 1, 8) - 8 : !bit(at + 1) ? tree(at + 130 + (pos << 3), 1, 8) : 16 - 256 + tree(at + 258, 1, 256);
  let done = 0, state = 0, rep0 = 0, rep1 = 0, rep2 = 0, rep3 = 0;
  const slice = (from, until) => {
    let here = from;
    while (here < until) {
      const pos = here & mask;
      if (!bit(IS_MATCH + (state << 4) + pos)) {
        const before = here ? out[here - 1] : 0, from = LITERAL + 0x300 * (((here & literals) << lc) + (before >>> 8 - lc));
        let sign = 1;
        if (state >= 7) {
          let near = out[here - rep0 - 1];
          do { const high = near >>> 7 & 1; near <<= 1; const b = bit(from + (1 + high << 8) + sign); sign = sign << 1 | b; if (high !== b) break; } while (sign < 0x100);
        }
        out[here++] = tree(from, sign, 0x100);
        state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
        continue;
      }
      let count;
      if (bit(IS_REP + state)) {
        if (!bit(IS_REP0 + state)) {
          if (!bit(IS_LONG + (state << 4) + pos)) { state = state < 7 ? 9 : 11; out[here] = out[here - rep0 - 1]; here++; continue; }
        } else {
          let far;
          if (!bit(IS_REP1 + state)) far = rep1;
          else { if (!bit(IS_REP2 + state)) far = rep2; else { far = rep3; rep3 = rep2; } rep2 = rep1; }
          rep1 = rep0; rep0 = far;
        }
        count = length(REP_LEN, pos);
        state = state < 7 ? 8 : 11;
      } else {
        rep3 = rep2; rep2 = rep1; rep1 = rep0;
        count = length(LEN, pos);
        state = state < 7 ? 7 : 10;
        const slot = tree(SLOTS + ((count < 4 ? count : 3) << 6), 1, 64) - 64;
        if (slot < 4) rep0 = slot;
        else {
          const bits = (slot >>> 1) - 1;
          rep0 = (2 | slot & 1) << bits;
          rep0 += slot < 14 ? back(SPECIAL + rep0 - slot, bits) : (direct(bits - 4) << 4) + back(ALIGN, 4);
        }
      }
      if (rep0 < 0 || rep0 >= here) throw new Error("what is packed inside the file is damaged");
      const end = Math.min(size, here + count + 2), far = rep0 + 1;
      while (here < end) { out[here] = out[here - far]; here++; }
    }
    return here;
  };
  while (done < size) { done = slice(done, Math.min(size, done + SLICE)); await pause(); }
  return out;
}
