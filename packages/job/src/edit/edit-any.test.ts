/** Any edit of any text: the values come out as edited, and comments and layout survive. Seeded. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { createScanner, type Node, type ParseError, parse, parseTree } from 'jsonc-parser';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../../tests/helpers/random-line.ts';
import { formatPath, parsePath, type Segment } from '../path.ts';
import { editJob, type JobEdit } from './edit-job.ts';

type Value = null | number | string | boolean | readonly Value[] | { readonly [key: string]: Value };

const FILES = ['tender-7/tender-7', 'tender-7/first-try', 'inch/pump-set'].map((name) =>
  readFileSync(new URL(`../../../../docs/examples/${name}.job.json`, import.meta.url), 'utf8'),
);

/** The values of a text; fails when it cannot be read. */
function read(text: string): Value {
  const errors: ParseError[] = [];
  const value = parse(text, errors, { allowTrailingComma: true }) as Value;
  expect(errors).toEqual([]);
  return value;
}

interface Comment {
  readonly text: string;
  readonly start: number;
}

function commentsOf(text: string): Comment[] {
  const scanner = createScanner(text, false);
  const comments: Comment[] = [];
  while (scanner.getPosition() < text.length) {
    scanner.scan();
    const start = scanner.getTokenOffset();
    if (text[start] === '/') comments.push({ text: text.slice(start, scanner.getPosition()), start });
  }
  return comments;
}

/** What an edit means, said on values. */
function model(
  value: Value,
  path: readonly Segment[],
  change: (old: Value | undefined) => Value | undefined,
): Value {
  const [first, ...rest] = path;
  if (first === undefined) return change(value)!;
  if (typeof first === 'number') {
    const list = value as readonly Value[];
    const next = rest.length > 0 ? model(list[first]!, rest, change) : change(list[first]);
    return next === undefined ? list.toSpliced(first, 1) : list.with(first, next);
  }
  const object = value as { readonly [key: string]: Value };
  const old = object[first];
  const next = rest.length > 0 ? model(old ?? {}, rest, change) : change(old);
  const { [first]: _, ...others } = object;
  if (next === undefined) return others;
  return first in object
    ? Object.fromEntries(Object.entries(object).map(([k, v]) => [k, k === first ? next : v]))
    : { ...others, [first]: next };
}

function edited(value: Value, edit: JobEdit): Value {
  const path = parsePath(edit.path);
  if ('insert' in edit)
    return model(value, path, (list) =>
      ((list ?? []) as readonly Value[]).toSpliced(edit.insert, 0, edit.value as Value),
    );
  if (!('move' in edit)) return model(value, path, () => edit.value as Value | undefined);
  const [holder, from] = [path.slice(0, -1), path.at(-1) as number];
  return model(value, holder, (list) => {
    const all = list as readonly Value[];
    return all.toSpliced(from, 1).toSpliced(edit.move, 0, all[from]!);
  });
}

/** Every place of a value, by its path. */
function placesIn(
  value: Value,
  at: readonly Segment[] = [],
): readonly (readonly [readonly Segment[], Value])[] {
  const inside = Array.isArray(value)
    ? value.flatMap((each: Value, i) => placesIn(each, [...at, i]))
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, each]) => placesIn(each as Value, [...at, key]))
      : [];
  return [[at, value], ...inside];
}

const VALUES: readonly Value[] = [
  12.5,
  '3 7/32 in',
  null,
  true,
  [60, 130, 110],
  { at: [60, 130, 110], radius: 60 },
  { at: [1, 2, 3] },
  [{ at: [0, 0, 0] }, { at: [1, 0, 0], note: 'a "note" // not a comment' }],
  {},
  [],
];

type Listed = readonly [readonly Segment[], readonly Value[]];

/** Some edit that a value allows, picked by `random`. */
function someEdit(value: Value, random: () => number): JobEdit {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const places = placesIn(value);
  const lists = places.filter(([, inside]) => Array.isArray(inside)) as readonly Listed[];
  const kind = Math.floor(random() * 5);
  if (kind === 0 && lists.length > 0) {
    const [path, list] = pick(lists);
    return { path: formatPath(path), insert: Math.floor(random() * (list.length + 1)), value: pick(VALUES) };
  }
  const full = lists.filter(([, list]) => list.length > 0);
  if (kind === 1 && full.length > 0) {
    const [path, list] = pick(full);
    const some = (): number => Math.floor(random() * list.length);
    return { path: formatPath([...path, some()]), move: some() };
  }
  const [path, old] = pick(places);
  if (kind === 2 && path.length > 0) return { path: formatPath(path), value: undefined };
  const object = typeof old === 'object' && old !== null && !Array.isArray(old);
  if (kind === 3 && object && Object.keys(old).length < 4) {
    const key = pick(['new', 'new-er', '1/2', 'a.b'].filter((name) => !(name in old)));
    return random() < 0.5
      ? { path: formatPath([...path, key, 'deep']), value: pick(VALUES) }
      : { path: formatPath([...path, key]), insert: 0, value: pick(VALUES) };
  }
  return { path: formatPath(path), value: pick(VALUES) };
}

/** The stretch of a text that an edit takes away: an element or key with the rest of its last line, or a value. */
function touched(text: string, edit: JobEdit): { start: number; end: number } {
  let node: Node = parseTree(text, [], { allowTrailingComma: true })!;
  for (const segment of parsePath(edit.path)) {
    const next =
      typeof segment === 'number'
        ? node.children?.[segment]
        : node.children?.find(({ children }) => children?.[0]?.value === segment)?.children?.[1];
    if (!next) return { start: 0, end: 0 };
    node = next;
  }
  const end = node.offset + node.length;
  if ('insert' in edit || 'move' in edit) return { start: 0, end: 0 };
  const lineEnd = text.slice(end).search(/[\r\n]|$/u);
  if (edit.value !== undefined) return { start: node.offset, end };
  const whole = node.parent?.type === 'property' ? node.parent : node;
  return { start: whole.offset, end: end + lineEnd };
}

const counted = (comments: readonly Comment[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { text } of comments) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
};

function hold(text: string, edit: JobEdit): string {
  const after = editJob(text, [edit]);
  const said = `${JSON.stringify(edit)}\n${text}\n→\n${after}`;
  expect(JSON.stringify(read(after)), said).toBe(JSON.stringify(edited(read(text), edit)));
  const { start, end } = touched(text, edit);
  const outside = commentsOf(text).filter((comment) => comment.start < start || comment.start >= end);
  const left = counted(commentsOf(after));
  for (const [comment, count] of counted(outside))
    expect(left.get(comment) ?? 0, `${comment}\n${said}`).toBeGreaterThanOrEqual(count);
  return after;
}

/** Writes a value with comments, line ends, spaces and commas strewn in. */
function strewn(value: Value, random: () => number, eol: string): string {
  let n = 0;
  const gap = (): string => {
    const dice = Math.floor(random() * 9);
    n += 1;
    if (dice === 0) return ` /* c${n} */ `;
    if (dice === 1) return ` // c${n}${eol}  `;
    if (dice === 2) return `${eol}${' '.repeat(Math.floor(random() * 4))}`;
    if (dice === 3) return `${eol}${eol}  // c${n}${eol}`;
    if (dice === 4) return ` /* c${n}${eol} */`;
    return dice < 7 ? ' ' : '';
  };
  const write = (each: Value): string => {
    if (typeof each !== 'object' || each === null) return JSON.stringify(each);
    const list = Array.isArray(each);
    const items = list
      ? each.map((inside: Value) => write(inside))
      : Object.entries(each).map(
          ([key, inside]) => `${JSON.stringify(key)}${gap()}:${gap()}${write(inside as Value)}`,
        );
    const trailing = items.length > 0 && random() < 0.3 ? `,${gap()}` : '';
    const body = items.map((item) => gap() + item + gap()).join(',');
    return `${list ? '[' : '{'}${items.length === 0 ? gap() : body}${trailing}${list ? ']' : '}'}`;
  };
  return gap() + write(value) + gap();
}

const value = fc.letrec<{ any: Value }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom<Value>(1, -2.5, 'x', '// no comment', '{', true, null),
    fc.array(tie('any'), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom('a', 'b', 'c-d', '12.5', 'e f'), tie('any'), {
      maxKeys: 4,
      noNullPrototype: true,
    }),
  ),
})).any;

describe('any edit', () => {
  it.each(FILES.map((file, i) => [i, file] as const))('of example %d', (_, file) => {
    const check = fc.property(fc.nat(), (seed) => {
      const random = seeded(seed);
      let text = file;
      for (let i = 0; i < 4; i++) text = hold(text, someEdit(read(text), random));
    });
    fc.assert(check, { seed: 31, numRuns: 30 });
  });

  it('of any text', () => {
    const eols = fc.constantFrom('\n', '\r\n');
    const check = fc.property(value, fc.nat(), eols, (written, seed, eol) => {
      const random = seeded(seed);
      let text = strewn({ top: written }, random, eol);
      for (let i = 0; i < 3; i++) {
        const now = read(text);
        if (typeof now !== 'object' || now === null) return;
        text = hold(text, someEdit(now, random));
      }
    });
    fc.assert(check, { seed: 32, numRuns: 600 });
  });
});

describe('a value set', () => {
  it('changes no sign outside it', () => {
    const file = FILES[2]!;
    for (const [path] of placesIn(read(file))) {
      const edit: JobEdit = { path: formatPath(path), value: 'changed' };
      const { start, end } = touched(file, edit);
      expect(editJob(file, [edit])).toBe(`${file.slice(0, start)}"changed"${file.slice(end)}`);
    }
  });
});

describe('putting in and taking out again', () => {
  it.each([
    ['pump set', FILES[2]!, 1],
    ['Tender 7', FILES[0]!, 7],
  ] as const)('gives the file of the %s again', (_, file, every) => {
    const lists = placesIn(read(file)).filter(([, value]) => Array.isArray(value)) as readonly Listed[];
    const spots = lists.flatMap(([path, list]) =>
      [...list, null].map((__, i) => [formatPath(path), i] as const),
    );
    const tried = spots.filter((__, i) => i % every === 0);
    expect(tried.length).toBeGreaterThan(20);
    for (const [path, insert] of tried)
      for (const value of [7, { at: [1, 2, 3] }, [{ a: 1 }, { b: 2 }]]) {
        const there = editJob(file, [{ path, insert, value }]);
        expect(editJob(there, [{ path: `${path}[${insert}]`, value: undefined }])).toBe(file);
      }
  });
});
