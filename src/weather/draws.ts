/** A small mixing of 32 bits, every one of which reaches every other. @source lowbias32 (C. Wellons, public domain), from memory */
function mixed(bits: number): number {
  let x = bits | 0;
  x = Math.imul(x ^ (x >>> 16), 0x7feb352d);
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b);
  return x ^ (x >>> 16);
}

function reversed(bits: number): number {
  let x = bits | 0;
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2);
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4);
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8);
  return (x >>> 16) | (x << 16);
}

/** Flips each bit by a hash of the bits below it. @source Laine and Karras 2011, constants of Burley 2020, from memory */
function flipped(bits: number, seed: number): number {
  let x = (bits + seed) | 0;
  x ^= Math.imul(x, 0x6c50b47c);
  x ^= Math.imul(x, 0xb82f1e52);
  x ^= Math.imul(x, 0xc7afe638);
  return x ^ Math.imul(x, 0x8d22f6e6);
}

/**
 * What makes Sobol's sequence: for each dimension after the first the degree of its polynomial, the polynomial's inner bits,
 * and its first numbers.
 *
 * @source Joe and Kuo 2008, first lines of their table, from memory; a test shows that every pair of dimensions fills its squares
 */
const SOBOL = [
  [1, 0, [1]],
  [2, 1, [1, 3]],
  [3, 1, [1, 3, 1]],
  [3, 2, [1, 1, 1]],
  [4, 1, [1, 1, 3, 3]],
  [4, 4, [1, 3, 5, 13]],
] as const;

/** How many draws of one name can be spread evenly together. */
export const TOGETHER: number = SOBOL.length + 1;

/** What each bit of an index adds to a point of one dimension, lowest bit first. */
const DIRECTIONS: readonly Int32Array[] = [
  Int32Array.from({ length: 32 }, (_, bit) => 1 << (31 - bit)),
  ...SOBOL.map(([degree, inner, first]) => {
    const all = new Int32Array(32);
    for (let bit = 0; bit < 32; bit++) {
      const begun = first[bit];
      if (begun !== undefined) {
        all[bit] = begun << (31 - bit);
        continue;
      }
      const back = all[bit - degree]!;
      let next = back ^ (back >>> degree);
      for (let k = 1; k < degree; k++) if ((inner >>> (degree - 1 - k)) & 1) next ^= all[bit - k]!;
      all[bit] = next;
    }
    return all;
  }),
];

/**
 * Numbers between 0 and 1, the same for the same seed and name, spread evenly: of the first 2, 4, 8, … each part of as many
 * equal ones holds one, and so does every later run of such a length. More never move the earlier ones. Names pair at random;
 * the dimensions of one name are spread evenly together.
 *
 * @param name - What is drawn; each name is a sequence of its own.
 * @param dimension - 0 to TOGETHER − 1.
 * @source Sobol's sequence, its order shuffled and its digits scrambled as by Owen (Burley 2020, from memory)
 */
export function draws(seed: number, name: string, dimension = 0): (index: number) => number {
  let key = mixed(seed);
  for (let i = 0; i < name.length; i++) key = mixed(key ^ Math.imul(name.charCodeAt(i) + 1, 0x9e3779b1));
  const order = mixed(key ^ 0x68bc21eb);
  const digits = mixed(key ^ Math.imul(dimension + 1, 0x02e5be93));
  const directions = DIRECTIONS[dimension]!;
  return (index) => {
    let point = 0;
    let rest = reversed(flipped(reversed(index), order));
    for (let bit = 0; rest !== 0; bit++, rest >>>= 1) if (rest & 1) point ^= directions[bit]!;
    return ((reversed(flipped(reversed(point), digits)) >>> 0) + 0.5) / 2 ** 32;
  };
}
