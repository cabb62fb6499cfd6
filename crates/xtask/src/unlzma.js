// Unpacks an LZMA stream without a header (3 context bits of a literal, no position bits, size known), after the public
// description of the format; what was written already is the dictionary.
const unlzma = (from, size) => {
  "use strict";
  const to = new Uint8Array(size);
  const MATCH = 0, REP = 12, REP0 = 24, REP1 = 36, REP2 = 48, SHORT = 60, SLOT = 72, SPECIAL = 328, ALIGN = 456,
    LENGTH = 472, AGAIN = 746, LITERAL = 1020;
  const odds = new Uint16Array(LITERAL + (768 << 3)).fill(1024);
  let at = 5, range = 0xffffffff, code = 0, n = 0, state = 0, r0 = 0, r1 = 0, r2 = 0, r3 = 0;
  for (let i = 1; i < 5; i++) code = (code << 8 | from[i]) >>> 0;
  const more = () => {
    if (range < 0x1000000) {
      range = (range << 8) >>> 0;
      code = (code << 8 | from[at++]) >>> 0;
    }
  };
  const bit = (i) => {
    const p = odds[i], bound = (range >>> 11) * p;
    let b = 0;
    if (code < bound) {
      range = bound;
      odds[i] = p + ((2048 - p) >> 5);
    } else {
      range -= bound;
      code -= bound;
      odds[i] = p - (p >> 5);
      b = 1;
    }
    more();
    return b;
  };
  const tree = (base, bits) => {
    let m = 1;
    for (let i = 0; i < bits; i++) m = m << 1 | bit(base + m);
    return m - (1 << bits);
  };
  const reverse = (base, bits) => {
    let m = 1, all = 0;
    for (let i = 0; i < bits; i++) {
      const b = bit(base + m);
      m = m << 1 | b;
      all |= b << i;
    }
    return all;
  };
  const direct = (bits) => {
    let all = 0;
    for (; bits > 0; bits--) {
      range >>>= 1;
      const b = code >= range ? 1 : 0;
      if (b) code -= range;
      all = all << 1 | b;
      more();
    }
    return all;
  };
  const length = (base) => {
    if (!bit(base)) return tree(base + 2, 3);
    if (!bit(base + 1)) return 8 + tree(base + 10, 3);
    return 16 + tree(base + 18, 8);
  };
  while (n < size) {
    if (!bit(MATCH + state)) {
      const base = LITERAL + 768 * ((n ? to[n - 1] : 0) >> 5);
      let s = 1;
      if (state > 6) {
        let was = to[n - r0 - 1];
        while (s < 256) {
          const w = was >> 7 & 1, b = bit(base + (1 + w << 8) + s);
          was <<= 1;
          s = s << 1 | b;
          if (w !== b) break;
        }
      }
      while (s < 256) s = s << 1 | bit(base + s);
      to[n++] = s;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let left;
    if (bit(REP + state)) {
      if (bit(REP0 + state)) {
        let r = r1;
        if (bit(REP1 + state)) {
          if (bit(REP2 + state)) {
            r = r3;
            r3 = r2;
          } else r = r2;
          r2 = r1;
        }
        r1 = r0;
        r0 = r;
      } else if (!bit(SHORT + state)) {
        state = state < 7 ? 9 : 11;
        to[n] = to[n - r0 - 1];
        n++;
        continue;
      }
      left = length(AGAIN);
      state = state < 7 ? 8 : 11;
    } else {
      r3 = r2;
      r2 = r1;
      r1 = r0;
      left = length(LENGTH);
      state = state < 7 ? 7 : 10;
      const slot = tree(SLOT + (left < 3 ? left : 3) * 64, 6), bits = (slot >> 1) - 1;
      r0 = slot;
      if (slot > 3) {
        r0 = (2 | slot & 1) << bits;
        if (slot < 14) r0 += reverse(SPECIAL + r0 - slot, bits);
        else r0 += (direct(bits - 4) << 4) + reverse(ALIGN, 4);
      }
    }
    if (r0 >= n) throw new Error("The program in this page is damaged.");
    for (left += 2; left > 0 && n < size; left--, n++) to[n] = to[n - r0 - 1];
  }
  return to;
};
