// Unpacks what `xz --format=lzma` has packed (LZMA, after its published specification): a fifth less
// to send than gzip, which is all that browsers unpack by themselves. The size stands in the head.

const bitModel = 11;
const half = 1 << (bitModel - 1);
const states = 12;

// The range decoder: bits, each by how likely it was so far.
class Bits {
  #bytes;
  #at;
  #range = 0xffffffff;
  #code = 0;

  constructor(bytes, at) {
    this.#bytes = bytes;
    this.#at = at + 1;
    for (let i = 0; i < 4; ++i) this.#code = this.#code * 256 + bytes[this.#at++];
  }

  #more() {
    if (this.#range >= 0x1000000) return;
    this.#range *= 256;
    this.#code = this.#code * 256 + (this.#bytes[this.#at++] ?? 0);
  }

  bit(odds, i) {
    const bound = (this.#range >>> bitModel) * odds[i];
    if (this.#code < bound) {
      this.#range = bound;
      odds[i] += ((1 << bitModel) - odds[i]) >> 5;
      this.#more();
      return 0;
    }
    this.#range -= bound;
    this.#code -= bound;
    odds[i] -= odds[i] >> 5;
    this.#more();
    return 1;
  }

  // Of even odds, the highest first.
  plain(count) {
    let value = 0;
    for (let i = 0; i < count; ++i) {
      this.#range = this.#range >>> 1;
      const set = this.#code >= this.#range;
      if (set) this.#code -= this.#range;
      value = value * 2 + (set ? 1 : 0);
      this.#more();
    }
    return value;
  }

  tree(odds, from, count) {
    let node = 1;
    for (let i = 0; i < count; ++i) node = node * 2 + this.bit(odds, from + node);
    return node - (1 << count);
  }

  // The lowest first.
  reverse(odds, from, count) {
    let node = 1;
    let value = 0;
    for (let i = 0; i < count; ++i) {
      const bit = this.bit(odds, from + node);
      node = node * 2 + bit;
      value |= bit << i;
    }
    return value;
  }
}

const fresh = (count) => new Uint16Array(count).fill(half);

class Lengths {
  choice = fresh(2);
  low = fresh(16 * 8);
  middle = fresh(16 * 8);
  high = fresh(256);

  read(bits, place) {
    if (bits.bit(this.choice, 0) === 0) return 2 + bits.tree(this.low, place * 8, 3);
    if (bits.bit(this.choice, 1) === 0) return 10 + bits.tree(this.middle, place * 8, 3);
    return 18 + bits.tree(this.high, 0, 8);
  }
}

function distanceOf(bits, odds, length) {
  const slot = bits.tree(odds.slot, Math.min(length - 2, 3) * 64, 6);
  if (slot < 4) return slot;
  const more = (slot >> 1) - 1;
  const base = (2 | (slot & 1)) * 2 ** more;
  if (slot < 14) return base + bits.reverse(odds.special, base - slot, more);
  return base + bits.plain(more - 4) * 16 + bits.reverse(odds.align, 0, 4);
}

function literal(bits, odds, from, matched) {
  let node = 1;
  let like = matched;
  while (like !== undefined && node < 256) {
    const expected = (like >> 7) & 1;
    like = (like << 1) & 255;
    const bit = bits.bit(odds, from + ((1 + expected) << 8) + node);
    node = node * 2 + bit;
    if (bit !== expected) break;
  }
  while (node < 256) node = node * 2 + bits.bit(odds, from + node);
  return node & 255;
}

export function unpack(packed) {
  const head = new DataView(packed.buffer, packed.byteOffset, 13);
  const [lc, lp, pb] = [packed[0] % 9, Math.floor(packed[0] / 9) % 5, Math.floor(packed[0] / 45)];
  const out = new Uint8Array(head.getUint32(5, true));
  const bits = new Bits(packed, 13);
  const odds = {
    match: fresh(states * 16), again: fresh(states), first: fresh(states), second: fresh(states), third: fresh(states), whole: fresh(states * 16),
    literal: fresh(0x300 << (lc + lp)), slot: fresh(4 * 64), special: fresh(128), align: fresh(16),
  };
  const [fromNew, fromAgain] = [new Lengths(), new Lengths()];
  let [a, b, c, d] = [0, 0, 0, 0]; // the last four distances, less one
  let state = 0;
  let at = 0;
  while (at < out.length) {
    const place = at & ((1 << pb) - 1);
    if (bits.bit(odds.match, state * 16 + place) === 0) {
      const context = ((at & ((1 << lp) - 1)) << lc) + ((at ? out[at - 1] : 0) >> (8 - lc));
      out[at] = literal(bits, odds.literal, 0x300 * context, state < 7 ? undefined : out[at - a - 1]);
      at += 1;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let length;
    if (bits.bit(odds.again, state) === 0) {
      [b, c, d] = [a, b, c];
      length = fromNew.read(bits, place);
      a = distanceOf(bits, odds, length);
      state = state < 7 ? 7 : 10;
    } else {
      length = 0;
      if (bits.bit(odds.first, state) === 0) {
        if (bits.bit(odds.whole, state * 16 + place) === 0) length = 1;
      } else if (bits.bit(odds.second, state) === 0) [a, b] = [b, a];
      else if (bits.bit(odds.third, state) === 0) [a, b, c] = [c, a, b];
      else [a, b, c, d] = [d, a, b, c];
      if (length === 1) state = state < 7 ? 9 : 11;
      else {
        length = fromAgain.read(bits, place);
        state = state < 7 ? 8 : 11;
      }
    }
    if (a >= at) throw new Error('the engine in this page is damaged');
    for (let i = 0; i < length && at < out.length; ++i, ++at) out[at] = out[at - a - 1];
  }
  return out;
}
