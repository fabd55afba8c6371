/**
 * Freezes a plain value and everything in it, and returns it. What is frozen already is taken to be frozen all the
 * way down, so that what many lines share is walked once. (A set of what was walked did the same and cost more
 * than all the checks together: the collector has to look after every entry.)
 */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const key in value) deepFreeze(value[key]);
  return value;
}
