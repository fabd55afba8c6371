/** Numbers as PDF writes them: never an exponent, never −0, the same text wherever the last bit of a double fell. */

/** A length or coordinate in mm, to 10 nm. @throws RangeError when it is not finite */
export const mm = (value: number): string => fixed(value, 100_000);

/** A number without unit (cosine, scale), to nine decimals. @throws RangeError when it is not finite */
export function ratio(value: number): string {
  const [whole, decimals] = finite(value).toFixed(9).split('.');
  const text = `${whole}.${decimals}`.replace(/\.?0+$/u, '');
  return text === '-0' ? '0' : text;
}

function fixed(value: number, parts: number): string {
  return String(Math.round(finite(value) * parts) / parts + 0);
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`renderPdf: every number must be finite, got ${value}`);
  return value;
}

/** A 32-bit sum of a text (FNV-1a): names a subset, never a safeguard. */
export function sum(text: string, seed = 0): number {
  let hash = (0x811c9dc5 ^ seed) >>> 0;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash;
}
