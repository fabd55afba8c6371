/** The items of a list or an object as they stand in the text, with their commas and comments. */
import { createScanner, type Node } from 'jsonc-parser';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** An element of a list, or a key with its value. */
export interface Item extends Span {
  /** Its value. */
  readonly node: Node;
  /** Offset of the comma after it, or null. */
  readonly comma: number | null;
  /** Comments that belong to it: those after it on the line it ends on. */
  readonly comments: readonly Span[];
}

export interface Container {
  /** Between the brackets. */
  readonly inside: Span;
  readonly items: readonly Item[];
  readonly kind: 'list' | 'object';
}

export const NEWLINE = /[\r\n]/u;

export function containerOf(text: string, node: Node): Container {
  const inside = { start: node.offset + 1, end: node.offset + node.length - 1 };
  const children = node.children ?? [];
  const items = children.map((child, i): Item => {
    const start = child.offset;
    const end = start + child.length;
    const next = children[i + 1]?.offset ?? null;
    const { comma, comments } = signsIn(text, { start: end, end: next ?? inside.end });
    const own = comments.filter((comment) => belongs(text, comment, { end, comma, next }));
    return { start, end, node: node.type === 'object' ? child.children![1]! : child, comma, comments: own };
  });
  return { inside, items, kind: node.type === 'object' ? 'object' : 'list' };
}

/** The comma and the comments of a stretch that holds no values. */
export function signsIn(text: string, { start, end }: Span): { comma: number | null; comments: Span[] } {
  const scanner = createScanner(text, false);
  scanner.setPosition(start);
  const comments: Span[] = [];
  let comma: number | null = null;
  for (;;) {
    scanner.scan();
    const at = scanner.getTokenOffset();
    if (at >= end) return { comma, comments };
    if (text[at] === ',') comma = at;
    if (text[at] === '/') comments.push({ start: at, end: at + scanner.getTokenLength() });
  }
}

/**
 * A comment belongs to the item that ends on its line: before the comma always; after it, unless the next item follows
 * on the same line, to which it then belongs.
 */
function belongs(
  text: string,
  comment: Span,
  item: { readonly end: number; readonly comma: number | null; readonly next: number | null },
): boolean {
  if (NEWLINE.test(text.slice(item.end, comment.start))) return false;
  if (item.comma === null || comment.start < item.comma || item.next === null) return true;
  return NEWLINE.test(text.slice(comment.end, item.next));
}

/** Where an item ends with all that belongs to it on its line. */
export function tailOf(text: string, { end, comma, comments }: Item): number {
  const near = comma !== null && !NEWLINE.test(text.slice(end, comma)) ? comma + 1 : end;
  return Math.max(near, ...comments.map((comment) => comment.end));
}

/** Start of the line that an offset lies in. */
export function lineStart(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && !NEWLINE.test(text[start - 1]!)) start -= 1;
  return start;
}

/** Offset of the line break at or after an offset, or the end of the text. */
export function lineEnd(text: string, offset: number): number {
  let end = offset;
  while (end < text.length && !NEWLINE.test(text[end]!)) end += 1;
  return end;
}

/** White space that the line of an offset begins with. */
export const indentAt = (text: string, offset: number): string =>
  /^[ \t]*/u.exec(text.slice(lineStart(text, offset), offset))![0];

/** True when nothing but white space is before it on its line. */
export const startsLine = (text: string, offset: number): boolean =>
  text.slice(lineStart(text, offset), offset).trim() === '';

export const isBlank = (text: string): boolean => text.trim() === '';
