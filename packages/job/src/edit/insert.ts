/** Puts a new item into a list or an object, laid out as its neighbours are. */
import { applyEdits, type Edit } from 'jsonc-parser';
import {
  type Container,
  type Item,
  indentAt,
  isBlank,
  lineEnd,
  lineStart,
  NEWLINE,
  signsIn,
  startsLine,
  tailOf,
} from './items.ts';
import type { Lines, Look } from './look.ts';

/** What is to be put in. */
export interface NewItem {
  /** Its text, when its line is indented by `indent`. */
  readonly body: (indent: string, lines: Lines) => string;
  /** Comments that come with it on its line, each with the white space before it. */
  readonly comments: string;
}

interface Place {
  readonly text: string;
  readonly look: Look;
  readonly container: Container;
  readonly index: number;
  readonly item: NewItem;
}

export function withItem(place: Place): string {
  const { text, container, index } = place;
  const { items } = container;
  if (items.length === 0) return intoEmpty(place);
  const beside = [items[index - 1], items[index]].filter((item) => item !== undefined);
  const ownLines = beside.every((item) => startsLine(text, item.start));
  return applyEdits(text, ownLines ? onItsOwnLine(place, beside) : amongOthers(place, beside[0]!));
}

/** New values are written as all objects and lists beside them are; where those differ, as there is room for them. */
function linesLike(text: string, items: readonly Item[]): Lines {
  const like = items.filter(({ node }) => node.type === 'object' || node.type === 'array');
  if (like.length === 0) return 'fit';
  if (like.every(({ start, end }) => !NEWLINE.test(text.slice(start, end)))) return 'one';
  return like.every(({ start }) => isBlank(text.slice(start + 1, lineEnd(text, start)))) ? 'many' : 'fit';
}

/** After the one before and what belongs to it, or after the bracket: comments above the next one stay above it. */
function onItsOwnLine(place: Place, beside: readonly Item[]): Edit[] {
  const { text, look, container, index, item } = place;
  const indent = indentAt(text, beside.at(-1)!.start);
  const lines = container.kind === 'list' ? linesLike(text, container.items) : 'fit';
  const line = look.eol + indent + item.body(indent, lines);
  const before = container.items[index - 1];
  if (before === undefined) {
    const head = signsIn(text, { start: container.inside.start, end: lineEnd(text, container.inside.start) });
    const at = head.comments.at(-1)?.end ?? container.inside.start;
    return [insertion(place, at, { added: `${line},` })];
  }
  return after(place, before, line);
}

/** Among others on one line; `beside` is the one before, or the first. */
function amongOthers(place: Place, beside: Item): Edit[] {
  const { text, look, container, index, item } = place;
  const next = container.items[index];
  const indent = indentAt(text, beside.start);
  const body = item.body(indent, 'one');
  const between = look.comma.slice(1);
  if (next !== undefined && (index === 0 || beside.comments.length > 0))
    return [insertion(place, next.start, { added: `${body},`, between })];
  if (endsInLineComment(text.slice(beside.end, tailOf(text, beside))))
    return after(place, beside, look.eol + indent + body);
  if (beside.comma === null) return [insertion(place, tailOf(text, beside), { added: look.comma + body })];
  return [insertion(place, beside.comma + 1, { added: `${between}${body},` })];
}

/** New text behind an item and its comments; the comma between the two goes where commas go. */
function after(place: Place, before: Item, added: string): Edit[] {
  const { text } = place;
  const tail = tailOf(text, before);
  if (before.comma !== null && before.comma < tail) return [insertion(place, tail, { added: `${added},` })];
  if (tail === before.end) return [insertion(place, tail, { added: `,${added}` })];
  const comma = { offset: before.end, length: 0, content: ',' };
  return [comma, insertion(place, tail, { added })];
}

interface Added {
  readonly added: string;
  /** Between it and what follows on its line. */
  readonly between?: string;
}

/** New text with the comments of the new item. A line comment swallows what follows it: that goes on a new line. */
function insertion({ text, look, item }: Place, offset: number, { added, between = '' }: Added): Edit {
  const rest = text.slice(offset, lineEnd(text, offset));
  const broken = endsInLineComment(item.comments) && !isBlank(rest);
  const end = broken ? look.eol + indentAt(text, offset) : between;
  return { offset, length: 0, content: added + item.comments + end };
}

/** Of text that holds only a comma and comments. */
function endsInLineComment(text: string): boolean {
  const last = signsIn(text, { start: 0, end: text.length }).comments.at(-1);
  return last !== undefined && text.startsWith('//', last.start);
}

function intoEmpty({ text, look, container, item }: Place): string {
  const { inside, kind } = container;
  const indent = indentAt(text, inside.start);
  const inner = indent + look.unit;
  const last = signsIn(text, inside).comments.at(-1);
  if (last !== undefined) {
    const inLine = !NEWLINE.test(text.slice(inside.start, inside.end));
    const added = inLine ? ` ${item.body(indent, 'one')}` : look.eol + inner + item.body(inner, 'fit');
    return text.slice(0, last.end) + added + text.slice(last.end);
  }
  const body = item.body(inner, 'fit');
  const ownLine = kind === 'list' && body.startsWith('{') && opensLine(text, inside.start);
  const several = NEWLINE.test(body) || ownLine;
  const pad = kind === 'object' ? look.pad : '';
  const filling = several ? look.eol + inner + body + look.eol + indent : pad + body + pad;
  return text.slice(0, inside.start) + filling + text.slice(inside.end);
}

/** True when the bracket before an offset is the first value on its line, with or without its key. */
const opensLine = (text: string, offset: number): boolean =>
  /^\s*(?:"(?:[^"\\]|\\.)*"\s*:\s*)?\[$/u.test(text.slice(lineStart(text, offset), offset));
