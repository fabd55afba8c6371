/** Ids from names: letters, digits, "-", "_" and ".", beginning with a letter or digit. */

/** An id may have this many characters. */
export const LONGEST_ID = 64;
/** Letters that do not come apart into a plain letter and a mark. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
  œ: 'oe',
  đ: 'd',
  ł: 'l',
  þ: 'th',
};

export interface IdWanted {
  /** Ids there are already. */
  readonly taken: readonly string[];
  /** What it is called when the name has no letter or digit to make an id of. */
  readonly otherwise: string;
}

/** An id that is not taken, made from a name: "Oil feed, left" → "oil-feed-left", or "oil-feed-left-2". */
export function idFrom(name: string, { taken, otherwise }: IdWanted): string {
  const plain = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßæøœđłþ]/gu, (letter) => PLAIN[letter] ?? '');
  const words = plain.replace(/[^a-z0-9._]+/gu, '-').replace(/^[^a-z0-9]+|[^a-z0-9]+$/gu, '');
  const base = words === '' ? otherwise : words.slice(0, LONGEST_ID);
  const free = (id: string): boolean => !taken.includes(id) && !(id in Object.prototype);
  for (let n = 1; ; n += 1) {
    const end = n === 1 ? '' : `-${n}`;
    const id = `${base.slice(0, LONGEST_ID - end.length)}${end}`;
    if (free(id)) return id;
  }
}
