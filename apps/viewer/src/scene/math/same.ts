/** Whether two pieces of plain data say the same: what is the same is not drawn anew. Objects with a class are compared as such. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!isPlain(a) || !isPlain(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => sameData(a[key], b[key]));
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null) return false;
  const kind = Object.getPrototypeOf(value);
  return kind === Object.prototype || kind === Array.prototype;
}
