/** The read-out at the bead: place, height, fall, clearance. */
import { formatLength } from 'runback';
import { curveY } from './curve.ts';
import { isNarrow, xOf } from './frame.ts';
import { baseline, lineHeight, textWidth } from './measure.ts';
import { isShort, type Reading, readingAt } from './readings.ts';
import { fallWords, nearestWords, whereLong, whereShort } from './say.ts';
import type { Box, Frame, Ink, ProfileInput, ProfilePicture, Spot } from './types.ts';

export interface Part {
  readonly text: string;
  readonly ink: Ink;
  readonly bold: boolean;
}

export interface ReadOutLine {
  readonly y: number;
  readonly parts: readonly Part[];
}

export interface ReadOut {
  readonly bead: Spot;
  readonly box: Box;
  /** Middle of the lettering. */
  readonly x: number;
  readonly lines: readonly ReadOutLine[];
}

/** Between the parts. */
export const PART_GAP = 9;
const EDGE = 8;
/** Round the box. */
const RIM = 2;

export function readOut(picture: ProfilePicture, input: ProfileInput, at: number): ReadOut {
  const { frame, spots } = picture;
  const reading = readingAt(input, at);
  const [place, more] = [placeParts(input, reading), factParts(input, reading)];
  const narrow = isNarrow(frame.size);
  const rows = narrow && more.length > 0 ? [place, more] : [[...place, ...more]];
  const x = xOf(frame, at);
  const box = boxOf(frame, rows, x);
  const line = lineHeight(frame.size.text) + 2;
  return {
    bead: { x, y: curveY(spots, x) },
    box,
    x: box.x + box.width / 2,
    lines: rows.map((parts, i) => ({
      parts,
      y: baseline(box.y + 1.5 + line * (i + 0.5), frame.size.text),
    })),
  };
}

function placeParts(input: ProfileInput, reading: Reading): readonly Part[] {
  const { style, profile } = input;
  const plain = (text: string): Part => ({ text, ink: 'muted', bold: false });
  return [
    { text: formatLength(reading.at, style), ink: 'ink', bold: true },
    plain(whereShort(reading, profile.bends.length)),
    { text: `height ${heightText(reading, input)}`, ink: 'ink', bold: false },
  ];
}

const heightText = ({ height }: Reading, { style }: ProfileInput): string =>
  formatLength(height, style, { bare: true }).replace('-', '−');

function factParts({ style }: ProfileInput, reading: Reading): readonly Part[] {
  const parts: Part[] = [];
  const fall = fallWords(reading);
  if (fall !== null) parts.push(marked(fall, reading.verdict ?? 'pass'));
  const { nearest } = reading;
  if (nearest !== null) parts.push(marked(nearestWords(nearest, style), isShort(nearest) ? 'fail' : 'pass'));
  return parts;
}

/** What passes is said plainly. */
function marked(text: string, verdict: 'pass' | 'note' | 'fail'): Part {
  if (verdict === 'pass') return { text, ink: 'ink', bold: false };
  return { text: `${verdict === 'fail' ? '✕' : '!'} ${text}`, ink: verdict, bold: true };
}

/** Over the bead, but within the drawing. */
function boxOf(frame: Frame, rows: readonly (readonly Part[])[], x: number): Box {
  const { size } = frame;
  const width = Math.min(
    size.width - 2 * RIM,
    Math.max(...rows.map((row) => rowWidth(row, size.text))) + 2 * EDGE,
  );
  const height = rows.length * (lineHeight(size.text) + 2) + 3;
  const left = Math.min(Math.max(x - width / 2, RIM), size.width - RIM - width);
  return { x: left, y: RIM, width, height };
}

const rowWidth = (parts: readonly Part[], size: number): number =>
  parts.reduce((sum, { text, bold }) => sum + textWidth(text, size, bold), (parts.length - 1) * PART_GAP);

/** The same in words for somebody who listens. */
export function spoken(input: ProfileInput, at: number): string {
  const { style, profile, worked } = input;
  const reading = readingAt(input, at);
  const over = worked.line.drain === null ? 'the lower end' : 'the drain end';
  const words = [
    `${formatLength(at, style)} from end A, ${whereLong(reading, profile.bends.length)}`,
    `height ${formatLength(Math.abs(reading.height), style)} ${reading.height < 0 ? 'under' : 'over'} ${over}`,
    spokenFall(reading),
    reading.nearest === null
      ? null
      : `${isShort(reading.nearest) ? 'too near: ' : ''}${nearestWords(reading.nearest, style)}`,
  ];
  return words.filter((one) => one !== null).join('; ');
}

function spokenFall(reading: Reading): string | null {
  const fall = fallWords(reading);
  if (fall === null) return null;
  const said = fall.replace(/ to ([AZ])$/u, ' toward end $1');
  if (reading.verdict === 'fail') return `${said}, fails`;
  return reading.verdict === 'note' ? `${said}, a note` : said;
}
