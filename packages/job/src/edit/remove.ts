/** Takes an item out of a list or an object, with its comma and the comments that belong to it. */
import { applyEdits, type Edit } from 'jsonc-parser';
import { type Container, isBlank, lineEnd, lineStart, NEWLINE, type Span } from './items.ts';

export function withoutItem(text: string, { inside, items }: Container, index: number): string {
  const item = items[index]!;
  // A last one without a comma leaves the one before it without: its own is between the two. So it is where commas
  // stand in front.
  const near = item.comma !== null && !NEWLINE.test(text.slice(item.end, item.comma));
  const comma = near ? item.comma : (items[index - 1]?.comma ?? item.comma);
  const gone: Span[] = [
    item,
    ...item.comments,
    ...(comma === null ? [] : [{ start: comma, end: comma + 1 }]),
  ];
  const spans = joined(text, gone);
  const left = spans.reduceRight((all, { start, end }) => all.slice(0, start) + all.slice(end), text);
  const removed = spans.reduce((sum, { start, end }) => sum + end - start, 0);
  if (items.length === 1 && isBlank(left.slice(inside.start, inside.end - removed)))
    return text.slice(0, inside.start) + text.slice(inside.end);
  return applyEdits(
    text,
    spans.map((span) => cut(text, span)),
  );
}

/** Spans in order; those with only white space of one line between them are one. */
function joined(text: string, spans: readonly Span[]): Span[] {
  const all: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.start - b.start)) {
    const last = all.at(-1);
    const between = last && text.slice(last.end, span.start);
    if (last && between !== undefined && isBlank(between) && !NEWLINE.test(between))
      all[all.length - 1] = { start: last.start, end: span.end };
    else all.push(span);
  }
  return all;
}

/** A span with the white space that would be left over: whole lines where nothing else stands on them. */
function cut(text: string, span: Span): Edit {
  const [from, to] = [lineStart(text, span.start), lineEnd(text, span.end)];
  const [before, after] = [text.slice(from, span.start), text.slice(span.end, to)];
  let { start, end } = span;
  if (isBlank(before) && isBlank(after)) {
    start = from;
    end = text.startsWith('\r\n', to) ? to + 2 : Math.min(to + 1, text.length);
  } else if (isBlank(after)) start -= before.length - before.trimEnd().length;
  else if (/[\s[{]$/u.test(before) || before === '') end += after.length - after.trimStart().length;
  return { offset: start, length: end - start, content: '' };
}
