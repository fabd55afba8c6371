/** The text of a job as a tree, and the way along a path in it. */
import { getNodeValue, type Node, type ParseError, parseTree } from 'jsonc-parser';
import { formatPath, type Segment } from '../path.ts';
import { bracketsOf } from '../syntax.ts';

/**
 * The tree of a text.
 * @throws RangeError when it cannot be read.
 */
export function treeOf(text: string): Node {
  const errors: ParseError[] = [];
  const brackets = bracketsOf(text);
  const root = brackets.tooDeep ? undefined : parseTree(text, errors, { allowTrailingComma: true });
  if (root === undefined || errors.length > 0)
    throw new RangeError('editJob: text must be one that can be read, comments and trailing commas allowed');
  return root;
}

/** How far a path can be followed: the last value on it, and what is left of it. */
export interface Found {
  readonly node: Node;
  /** Keys that are not there yet; none when the path ends at `node`. */
  readonly missing: readonly Segment[];
}

/**
 * Follows a path to its end or to the first key that an object has not.
 * @throws RangeError where it cannot be followed: an element that a list has not, a key in what is no object.
 */
export function follow(root: Node, path: readonly Segment[]): Found {
  let node = root;
  for (const [i, segment] of path.entries()) {
    const next = stepInto(node, segment);
    if (next === null) throw astray(path.slice(0, i + 1), `there is ${kindOf(node)}`);
    if (next === 'missing') return { node, missing: path.slice(i) };
    node = next;
  }
  return { node, missing: [] };
}

/** The value at a segment; 'missing' for a key that may be made; null where none can be. */
function stepInto(node: Node, segment: Segment): Node | 'missing' | null {
  if (typeof segment === 'number') return node.type === 'array' ? (node.children?.[segment] ?? null) : null;
  if (node.type !== 'object') return null;
  const property = node.children?.findLast(({ children }) => children?.[0]?.value === segment);
  return property?.children?.[1] ?? 'missing';
}

export function astray(path: readonly Segment[], why: string): RangeError {
  const where = path.length === 0 ? 'the whole job' : formatPath(path);
  return new RangeError(`editJob: cannot follow ${where}: ${why}`);
}

/** A value in words. */
export function kindOf({ type, children = [] }: Node): string {
  if (type === 'array') return `a list of ${children.length}`;
  return type === 'object' ? 'an object' : `a ${type === 'null' ? 'null' : type}`;
}

/** True when a value in the text already is the one wanted. */
export const holds = (node: Node, value: unknown): boolean =>
  JSON.stringify(getNodeValue(node)) === JSON.stringify(value);
