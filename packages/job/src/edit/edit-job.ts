/** Changes to the text of a job that leave everything else in it as it was written. */
import type { Node } from 'jsonc-parser';
import { parsePath, type Segment } from '../path.ts';
import { astray, type Found, follow, holds, kindOf, treeOf } from './document.ts';
import { type NewItem, withItem } from './insert.ts';
import { containerOf, indentAt, NEWLINE } from './items.ts';
import { type Lines, lookOf, written } from './look.ts';
import { withoutItem } from './remove.ts';

/** One change of a job's text. Paths as `formatPath` writes them, e.g. `lines[0].points[2].at`. */
export type JobEdit =
  /** Sets a value, and makes the objects on the way that are missing; `undefined` removes the key or the element. */
  | { readonly path: string; readonly value: unknown }
  /** Puts a value into the list at `path` before element `insert` (its length: at the end); a missing list is made. */
  | { readonly path: string; readonly insert: number; readonly value: unknown }
  /** Moves the element at `path` within its list so that it has index `move` afterwards, with its own text and comments. */
  | { readonly path: string; readonly move: number };

/**
 * The text of a job with the changes made in order. Values are in the job's own units. Comments, blank lines and the
 * layout of everything else stay as they are; new values are laid out like their neighbours. A comment behind an
 * element on its line belongs to it and goes with it; one above it stays where it is.
 * @throws RangeError when the text cannot be read, a path cannot be followed (an index out of range, a key in a
 * number), or a value is none that a job file can hold.
 * @example
 * ```ts
 * import { editJob } from '@runback/job';
 * const text = '{ "lines": [{ "points": [{ "at": [0, 0, 0] }] }] } // as measured';
 * editJob(text, [{ path: 'lines[0].points[0].at', value: [0, 0, 82.5] }]); // => '{ "lines": [{ "points": [{ "at": [0, 0, 82.5] }] }] } // as measured'
 * ```
 */
export function editJob(text: string, edits: readonly JobEdit[]): string {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  return mark + edits.reduce(edited, text.slice(mark.length));
}

function edited(text: string, edit: JobEdit): string {
  const path = parsePath(edit.path);
  if ('move' in edit) return moved(text, path, edit.move);
  if ('insert' in edit) return inserted(text, path, edit);
  return edit.value === undefined ? removed(text, path) : set(text, path, edit.value);
}

function set(text: string, path: readonly Segment[], value: unknown): string {
  const { node, missing } = follow(treeOf(text), path);
  if (missing.length > 0) return made(text, { node, missing, path }, value);
  if (holds(node, value)) return text;
  const { offset, length } = node;
  const old = text.slice(offset, offset + length);
  const options = { indent: indentAt(text, offset), lines: linesOf(text, node, old) };
  return text.slice(0, offset) + written(value, lookOf(text), options) + text.slice(offset + length);
}

/** A value is laid out as the one in its place was; where that was a plain one, as there is room for it. */
function linesOf(text: string, node: Node, old: string): Lines {
  const plain = node.type !== 'object' && node.type !== 'array';
  if (!plain) return NEWLINE.test(old) ? 'many' : 'one';
  const holder = node.parent?.type === 'property' ? node.parent.parent : node.parent;
  if (holder === undefined) return 'fit';
  return NEWLINE.test(text.slice(holder.offset, holder.offset + holder.length)) ? 'fit' : 'one';
}

/** Where a path breaks off. */
interface Gap extends Found {
  readonly path: readonly Segment[];
}

/** A key that was missing, at the end of its object, with the objects on the way to the value. */
function made(text: string, { node, missing, path }: Gap, value: unknown): string {
  if (missing.some((segment) => typeof segment === 'number')) throw astray(path, 'there is no list');
  const [key, ...deeper] = missing as readonly string[];
  const whole = deeper.reduceRight<unknown>((inside, name) => ({ [name]: inside }), value);
  const look = lookOf(text);
  const name = JSON.stringify(key) + look.colon;
  const body: NewItem['body'] = (indent, lines) => name + written(whole, look, { indent, lines });
  const container = containerOf(text, node);
  return withItem({ text, look, container, index: container.items.length, item: { body, comments: '' } });
}

function inserted(
  text: string,
  path: readonly Segment[],
  { insert, value }: { readonly insert: number; readonly value: unknown },
): string {
  const { node, missing } = follow(treeOf(text), path);
  const length = missing.length > 0 ? 0 : (node.children?.length ?? 0);
  if (missing.length === 0 && node.type !== 'array') throw astray(path, `there is ${kindOf(node)}, no list`);
  if (!isIndex(insert, length)) throw astray([...path, insert], `the list has ${length} elements`);
  if (missing.length > 0) return made(text, { node, missing, path }, [value]);
  const look = lookOf(text);
  const body: NewItem['body'] = (indent, lines) => written(value, look, { indent, lines });
  const container = containerOf(text, node);
  return withItem({ text, look, container, index: insert, item: { body, comments: '' } });
}

const isIndex = (index: number, most: number): boolean =>
  Number.isInteger(index) && index >= 0 && index <= most;

function removed(text: string, path: readonly Segment[]): string {
  if (path.length === 0) throw astray(path, 'it cannot be removed');
  const found = follow(treeOf(text), path);
  if (found.missing.length > 0) return text;
  const { container, index } = placeOf(text, found);
  return withoutItem(text, container, index);
}

function moved(text: string, path: readonly Segment[], to: number): string {
  const found = follow(treeOf(text), path);
  if (typeof path.at(-1) !== 'number' || found.missing.length > 0)
    throw astray(path, 'it is no element of a list');
  const { container, index } = placeOf(text, found);
  const most = container.items.length - 1;
  if (!isIndex(to, most)) throw astray([...path.slice(0, -1), to], `the last element is ${most}`);
  if (to === index) return text;
  const item = container.items[index]!;
  const own = text.slice(item.start, item.end);
  const comments = item.comments.map((comment) => withSpace(text, comment)).join('');
  const rest = withoutItem(text, container, index);
  const list = containerOf(rest, follow(treeOf(rest), path.slice(0, -1)).node);
  const place = { text: rest, look: lookOf(text), container: list, index: to };
  return withItem({ ...place, item: { body: () => own, comments } });
}

/** A comment with the white space before it. */
function withSpace(text: string, { start, end }: { readonly start: number; readonly end: number }): string {
  const before = text.slice(0, start);
  return text.slice(before.trimEnd().length, end);
}

/** The list or object that a value stands in, and which of its items it is. */
function placeOf(text: string, { node }: Found) {
  const holder = node.parent!.type === 'property' ? node.parent!.parent! : node.parent!;
  const container = containerOf(text, holder);
  return { container, index: container.items.findIndex((item) => item.node === node) };
}
