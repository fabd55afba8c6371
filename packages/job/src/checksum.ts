const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/**
 * Short checksum of a job's text, eight hex digits: to see at the bench whether a sheet belongs to this text. It
 * guards against mix-ups, not against intent. FNV-1a, 32 bits, over the UTF-8 bytes.
 * @example
 * ```ts
 * import { checksum } from '@runback/job';
 * checksum('a'); // => "e40c292c"
 * ```
 */
export function checksum(text: string): string {
  let hash = FNV_OFFSET;
  for (const char of text) {
    for (const byte of utf8(char.codePointAt(0)!)) hash = Math.imul(hash ^ byte, FNV_PRIME) >>> 0;
  }
  return hash.toString(16).padStart(8, '0');
}

function utf8(code: number): readonly number[] {
  if (code < 0x80) return [code];
  if (code < 0x800) return [0xc0 | (code >> 6), 0x80 | (code & 63)];
  if (code < 0x10000) return [0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
  return [0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63)];
}
