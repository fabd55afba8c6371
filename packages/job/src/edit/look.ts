/** How a text is written, and how a new value is written in it. */

/** What the writer of a text does between the signs of it. */
export interface Look {
  /** One step of indentation. */
  readonly unit: string;
  readonly eol: string;
  /** Inside the braces of an object on one line. */
  readonly pad: string;
  readonly colon: string;
  readonly comma: string;
}

/** On one line; on as many as it takes; or whichever reads better. */
export type Lines = 'one' | 'many' | 'fit';

/** Objects and lists longer than this go on several lines, unless their neighbours do not. */
const WIDEST = 100;

export function lookOf(text: string): Look {
  const tight = /":\S/u.test(text) && !/":\s/u.test(text);
  const close = tight || (/\{"/u.test(text) && !/\{ "/u.test(text));
  return {
    unit: /\n([ \t]+)\S/u.exec(text)?.[1] ?? '  ',
    eol: text.includes('\r\n') ? '\r\n' : '\n',
    pad: close ? '' : ' ',
    colon: tight ? ':' : ': ',
    comma: tight ? ',' : ', ',
  };
}

/**
 * A value as text, its first line to stand in a line indented by `indent`. Lists of plain values, like points, are
 * always on one line.
 * @throws RangeError when it is not what a job file can hold.
 */
export function written(
  value: unknown,
  look: Look,
  { indent, lines }: { indent: string; lines: Lines },
): string {
  const line = inOneLine(value, look);
  const several = lines === 'many' || (lines === 'fit' && (isLong(value) || line.length > WIDEST));
  if (!several || !holdsMore(value)) return line;
  const inner = indent + look.unit;
  const item = (key: string, inside: unknown): string =>
    `${inner}${key}${written(inside, look, { indent: inner, lines: 'fit' })}`;
  const items = Array.isArray(value)
    ? value.map((inside) => item('', inside))
    : entriesOf(value).map(([key, inside]) => item(JSON.stringify(key) + look.colon, inside));
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}${look.eol}${items.join(`,${look.eol}`)}${look.eol}${indent}${close}`;
}

function inOneLine(value: unknown, look: Look): string {
  if (Array.isArray(value)) return `[${value.map((inside) => inOneLine(inside, look)).join(look.comma)}]`;
  if (isObject(value)) {
    const entries = entriesOf(value).map(
      ([key, inside]) => JSON.stringify(key) + look.colon + inOneLine(inside, look),
    );
    return entries.length === 0 ? '{}' : `{${look.pad}${entries.join(look.comma)}${look.pad}}`;
  }
  const plain = value === null || typeof value === 'string' || typeof value === 'boolean';
  if (plain || (typeof value === 'number' && Number.isFinite(value))) return JSON.stringify(value);
  throw new RangeError(`editJob: value must be what a job file can hold, got ${String(value)}`);
}

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** What is undefined is not there. */
const entriesOf = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, inside]) => inside !== undefined);

/** An object, or a list that has objects or lists in it: worth several lines. */
const holdsMore = (value: unknown): value is object =>
  Array.isArray(value) ? value.some(isObject) : isObject(value) && entriesOf(value).length > 0;

/** A list of several objects is read line by line, and so is what holds one. */
function isLong(value: unknown): boolean {
  if (!isObject(value)) return false;
  const inside: readonly unknown[] = Object.values(value);
  const list = Array.isArray(value) && inside.length > 1;
  return inside.some((each) => isLong(each) || (list && isObject(each) && !Array.isArray(each)));
}
