/** Did you mean …? */
import { quote } from './issue.ts';

const MOST_EDITS = 3;
const LONGEST_WORD = 64;

/** Number of letters to add, drop, change or swap with a neighbour to get from `a` to `b`. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

const folded = (word: string): string => word.toLowerCase().replace(/[\s_.-]/gu, '');

/** The word of `words` most like `word`, or null when none is near. */
export function nearest(word: string, words: readonly string[]): string | null {
  if (word.length > LONGEST_WORD) return null;
  const from = folded(word);
  let best: string | null = null;
  let least = Math.min(MOST_EDITS, Math.max(1, Math.floor(from.length / 3))) + 1;
  for (const candidate of words) {
    const to = folded(candidate);
    if (Math.abs(to.length - from.length) >= least || to.length > LONGEST_WORD) continue;
    const edits = editDistance(from, to);
    if (edits < least) [best, least] = [candidate, edits];
  }
  return best;
}

/** `: did you mean "radius"?`, or an empty text. */
export function didYouMean(word: unknown, words: readonly string[]): string {
  const found = typeof word === 'string' ? nearest(word, words) : null;
  return found === null ? '' : `: did you mean ${quote(found)}?`;
}

const MOST_LISTED = 12;

/** `"a", "b" or "c"` */
export function oneOf(words: readonly string[]): string {
  if (words.length === 0) return 'none, because there are none';
  const listed = words.slice(0, MOST_LISTED).map(quote);
  if (words.length > MOST_LISTED) return `${listed.join(', ')} or another of ${words.length}`;
  return listed.length === 1 ? listed[0]! : `${listed.slice(0, -1).join(', ')} or ${listed.at(-1)}`;
}
