// A figure as a maker types it: a number, or arithmetic with + − × / and brackets, lengths in mm or inches. Nothing is
// ever run as a program. A bare number stands for the unit of its field; a factor stays bare.

export type Dimension = "length" | "angle" | "number";
export type Typed = { readonly value: number } | { readonly fault: string };

/** What a unit is in mm, or in degrees. */
const UNITS: Readonly<Record<string, readonly [Dimension, number]>> = {
  mm: ["length", 1], cm: ["length", 10], um: ["length", 0.001], "µm": ["length", 0.001], in: ["length", 25.4], inch: ["length", 25.4], '"': ["length", 25.4],
  deg: ["angle", 1], "°": ["angle", 1], degrees: ["angle", 1],
};
const MOST_SIGNS = 200;

/** A value with so many lengths (or angles) in it: 0 a bare number, 1 a length. */
interface Sum { readonly value: number; readonly of: number }

/** The value in mm, degrees or bare, by the dimension of its field; `bareMm`: how many mm a bare number stands for where a length is wanted. */
export function typedFigure(text: string, wanted: Dimension, bareMm = 1): Typed {
  const signs = signsOf(text);
  if (signs === null) return { fault: "a figure, or a sum of figures with + − × / and brackets" };
  if (signs.length === 0) return { fault: "a figure" };
  const reader = new Reader(signs, wanted, wanted === "length" ? bareMm : 1);
  const sum = reader.sum();
  if (sum === null || !reader.ended) return { fault: reader.says ?? "a whole sum: something stands where it cannot" };
  if (sum.of !== 0 && sum.of !== 1) return { fault: wanted === "length" ? "a length, not lengths multiplied" : "one figure" };
  const value = sum.of === 0 && wanted === "length" ? sum.value * bareMm : sum.value;
  return Number.isFinite(value) ? { value } : { fault: "a figure that can be held; nothing is parted by nought" };
}

type Sign = number | string;

/** Numbers, units and signs in order; null where something is none of these. */
function signsOf(text: string): Sign[] | null {
  const plain = text.replace(/[\u2009\u202f\u00a0]/g, "").replace(/[−–]/g, "-").replace(/[×·x*]/g, "*").replace(/[÷:]/g, "/").trim();
  const pattern = /\s*(?:(\d+(?:[.,]\d*)?|[.,]\d+)|([a-zµ°"]+)|([-+*/()]))/giy;
  const signs: Sign[] = [];
  while (pattern.lastIndex < plain.length) {
    const found = pattern.exec(plain);
    if (found === null || signs.length >= MOST_SIGNS) return null;
    signs.push(found[1] !== undefined ? Number(found[1].replace(",", ".")) : (found[2]?.toLowerCase() ?? found[3] ?? ""));
  }
  return signs;
}

class Reader {
  says: string | null = null;
  #at = 0;
  readonly #signs: readonly Sign[];
  readonly #wanted: Dimension;
  readonly #bare: number;

  constructor(signs: readonly Sign[], wanted: Dimension, bare: number) {
    this.#signs = signs;
    this.#wanted = wanted;
    this.#bare = bare;
  }

  get ended(): boolean { return this.#at === this.#signs.length; }

  sum(): Sum | null {
    let left = this.#product();
    for (let sign = this.#took("+", "-"); left !== null && sign !== null; sign = this.#took("+", "-")) {
      const right = this.#product();
      if (right === null) return null;
      left = this.#added(left, right, sign === "+" ? 1 : -1);
    }
    return left;
  }

  #product(): Sum | null {
    let left = this.#one();
    for (let sign = this.#took("*", "/"); left !== null && sign !== null; sign = this.#took("*", "/")) {
      const right = this.#one();
      if (right === null) return null;
      left = sign === "*" ? { value: left.value * right.value, of: left.of + right.of } : { value: left.value / right.value, of: left.of - right.of };
    }
    return left;
  }

  #one(): Sum | null {
    const sign = this.#took("+", "-");
    if (sign !== null) {
      const one = this.#one();
      return one === null ? null : { ...one, value: sign === "-" ? -one.value : one.value };
    }
    if (this.#took("(") !== null) {
      const inside = this.sum();
      return inside !== null && this.#took(")") !== null ? this.#inUnit(inside) : null;
    }
    const value = this.#signs[this.#at];
    if (typeof value !== "number") return null;
    this.#at += 1;
    return this.#inUnit({ value, of: 0 });
  }

  /** A unit may follow a bare value. */
  #inUnit(sum: Sum): Sum | null {
    const word = this.#signs[this.#at];
    if (typeof word !== "string" || /^[-+*/()]$/.test(word)) return sum;
    const unit = Object.hasOwn(UNITS, word) ? UNITS[word] : undefined;
    if (unit === undefined || unit[0] !== this.#wanted || sum.of !== 0) {
      this.says = unit === undefined ? `a unit that is known; ${word} is none` : `${this.#wanted === "number" ? "no unit" : `a unit of ${this.#wanted}`} here`;
      return null;
    }
    this.#at += 1;
    return { value: sum.value * unit[1], of: 1 };
  }

  /** Of two that are added, a bare one beside a length is a length in the unit of the field. */
  #added(a: Sum, b: Sum, by: 1 | -1): Sum | null {
    if (a.of === b.of) return { value: a.value + by * b.value, of: a.of };
    if (Math.min(a.of, b.of) !== 0 || Math.max(a.of, b.of) !== 1) return null;
    const full = (s: Sum) => (s.of === 0 ? s.value * this.#bare : s.value);
    return { value: full(a) + by * full(b), of: 1 };
  }

  #took(...wanted: string[]): string | null {
    const sign = this.#signs[this.#at];
    if (typeof sign !== "string" || !wanted.includes(sign)) return null;
    this.#at += 1;
    return sign;
  }
}
