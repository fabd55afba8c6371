/** The text of a job: its values, and where in the text each of them stands. */
import { type Node, type ParseError, parseTree } from 'jsonc-parser';
import { type Fault, quote } from './issue.ts';
import type { Segment } from './path.ts';
import { bracketsOf, DEEPEST, syntaxWords } from './syntax.ts';

export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface Source {
  /** Plain values; objects have no prototype, so no key of a job means anything to the language. */
  readonly data: unknown;
  /** Keys given twice, and keys that are never allowed. */
  readonly faults: readonly Fault[];
  place(fault: Pick<Fault, 'at' | 'on'>): Place;
}

/** Text that is no JSON, and where it stops being it. */
export interface SyntaxFault extends Place {
  readonly message: string;
  readonly expected: string;
  readonly got: string;
}

export type SourceRead =
  | { readonly ok: true; readonly source: Source }
  | { readonly ok: false; readonly fault: SyntaxFault };

const LONGEST_TEXT = 8_000_000;

/** Reads the text; stops at the first fault of syntax. Never throws. */
export function readSource(withMark: string): SourceRead {
  const text = withMark.startsWith('\uFEFF') ? withMark.slice(1) : withMark;
  const places = placesOf(text);
  const stop = (offset: number, words: readonly [string, string, string]): SourceRead => {
    const [message, expected, got] = words;
    return { ok: false, fault: { ...places(offset), message, expected, got } };
  };
  if (text.length > LONGEST_TEXT)
    return stop(0, [
      'the file is too long to be a job',
      `at most ${LONGEST_TEXT} characters`,
      `${text.length}`,
    ]);
  const brackets = bracketsOf(text);
  if (brackets.tooDeep)
    return stop(brackets.end, [
      'brackets are nested too deeply to be a job',
      `at most ${DEEPEST} levels`,
      'more',
    ]);
  const errors: ParseError[] = [];
  const root = parseTree(text.slice(0, brackets.end), errors, { allowTrailingComma: true });
  const first = errors.toSorted((a, b) => a.offset - b.offset)[0];
  if (root === undefined) return stop(0, nothing(text));
  if (first) return stop(first.offset, syntaxWords(first, text));
  return { ok: true, source: sourceOf(root, places) };
}

const nothing = (text: string): readonly [string, string, string] => [
  text.trim() === '' ? 'the file is empty' : 'there is no job in this file',
  'a job, beginning with {',
  'nothing that could be one',
];

function sourceOf(root: Node, places: (offset: number) => Place): Source {
  const faults: Fault[] = [];
  const data = readNode(root, [], faults);
  const find = finder(root);
  const place: Source['place'] = ({ at, on }) => places(find(at, on).offset);
  return { data, faults, place };
}

/** Value of a node; recursion is bounded by DEEPEST. */
function readNode(node: Node, at: readonly Segment[], faults: Fault[]): unknown {
  if (node.type === 'array')
    return (node.children ?? []).map((child, i) => readNode(child, [...at, i], faults));
  if (node.type !== 'object') return node.value;
  const object: Record<string, unknown> = Object.create(null);
  for (const property of node.children ?? []) {
    const key = keyOf(property);
    const value = property.children?.[1];
    const here = [...at, key];
    const got = quote(key);
    const twice = Object.hasOwn(object, key);
    if (key === '__proto__')
      faults.push({
        at: here,
        on: 'key',
        message: 'this key is never used in a job',
        expected: 'another key',
        got,
      });
    else if (twice)
      faults.push({
        at: here,
        on: 'key',
        message: `the key ${got} stands here twice`,
        expected: 'each key once',
        got,
      });
    else if (value) object[key] = readNode(value, here, faults);
  }
  return object;
}

/** Looks up the node at a path, its key when asked for, or the nearest one above that exists. */
function finder(root: Node): (at: readonly Segment[], on: Fault['on']) => Node {
  const tables = new Map<Node, ReadonlyMap<string, Node>>();
  /** Properties of an object by key; of equal keys the last. Kept, for a job may have thousands of faults. */
  const properties = (node: Node): ReadonlyMap<string, Node> => {
    const table =
      tables.get(node) ?? new Map((node.children ?? []).map((property) => [keyOf(property), property]));
    tables.set(node, table);
    return table;
  };
  const step = (node: Node, segment: Segment, on: Fault['on']): Node | undefined => {
    if (typeof segment === 'number') return node.type === 'array' ? node.children?.[segment] : undefined;
    const [key, value] = (node.type === 'object' && properties(node).get(segment)?.children) || [];
    return on === 'key' ? key : (value ?? key);
  };
  return (at, on) => {
    let node = root;
    for (const [i, segment] of at.entries()) {
      const next = step(node, segment, i === at.length - 1 ? on : 'value');
      if (!next) return node;
      node = next;
    }
    return node;
  };
}

const keyOf = (property: Node): string => String(property.children?.[0]?.value);

/** Line and column, both from 1, of an offset. A line ends with LF, CR LF or CR. */
function placesOf(text: string): (offset: number) => Place {
  const starts = [0];
  for (const match of text.matchAll(/\r\n|\n|\r/gu)) starts.push(match.index + match[0].length);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}
