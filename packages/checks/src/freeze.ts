/** Values frozen before: a surrounding shared by many lines is walked once. */
const frozen = new WeakSet<object>();

/** Freezes a plain value and everything in it, and returns it. */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || frozen.has(value)) return value;
  frozen.add(value);
  Object.freeze(value);
  for (const inner of Object.values(value)) deepFreeze(inner);
  return value;
}
