/**
 * True when two plain values (objects, arrays, numbers, texts) are written alike: the same keys in the same order and
 * the same values; 0 and −0 are two. What both share is not looked into. In plain loops: after each edit everything
 * said about every line is compared.
 */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && sameLists(a, b);
  return !Array.isArray(b) && sameObjects(a as Plain, b as Plain);
}

type Plain = Readonly<Record<string, unknown>>;

function sameLists(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!sameData(a[i], b[i])) return false;
  return true;
}

function sameObjects(a: Plain, b: Plain): boolean {
  const [x, y] = [Object.keys(a), Object.keys(b)];
  if (x.length !== y.length) return false;
  for (let i = 0; i < x.length; i++) {
    const key = x[i]!;
    if (key !== y[i] || !sameData(a[key], b[key])) return false;
  }
  return true;
}
