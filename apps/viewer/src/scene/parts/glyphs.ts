/** How letters and marks are drawn. */
import type { Inks } from './inks.ts';

export type Glyph =
  /** A letter at an end of the line. */
  | { readonly kind: 'end'; readonly text: string }
  /** A number at a bend, quieter. */
  | { readonly kind: 'tag'; readonly text: string; readonly strong: boolean }
  | { readonly kind: 'corner'; readonly square: boolean; readonly tone: 'rest' | 'chosen' | 'misfit' }
  /** Liquid would stay here; drawn so many times as large as the plain one. */
  | { readonly kind: 'drop'; readonly times: number }
  /** Air would stay here. */
  | { readonly kind: 'bubble'; readonly times: number }
  /** How much stays. */
  | { readonly kind: 'amount'; readonly text: string }
  /** A drop that runs along the line. */
  | { readonly kind: 'running' }
  /** The place of a finding. */
  | { readonly kind: 'ring' }
  /** A word beside an axis. */
  | { readonly kind: 'word'; readonly text: string };

export const FONT = '600 12px system-ui, "Segoe UI", "DejaVu Sans", sans-serif';

type Pen = OffscreenCanvasRenderingContext2D;

/** What a glyph is drawn on, CSS pixels; one that is drawn larger thinks itself on the plain sheet. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly css: (name: keyof Inks) => string;
}

/** Draws a glyph in the middle of its sheet. */
export function paint(pen: Pen, glyph: Glyph, sheet: Sheet): void {
  const { css: of } = sheet;
  if (glyph.kind === 'tag') tag(pen, sheet, glyph);
  else if (glyph.kind === 'corner') corner(pen, sheet, glyph);
  else if (glyph.kind === 'drop') drop(pen, sheet, of('ink'));
  else if (glyph.kind === 'running') running(pen, sheet);
  else if (glyph.kind === 'bubble') bubble(pen, sheet);
  else if (glyph.kind === 'ring') {
    disc(pen, sheet, { radius: 17, line: of('bg'), width: 5 });
    disc(pen, sheet, { radius: 17, line: of('select'), width: 2.5 });
  } else if (glyph.kind === 'end') {
    disc(pen, sheet, { radius: 10.5, fill: of('ink'), line: of('bg'), width: 2 });
    letters(pen, sheet, { text: glyph.text, fill: of('bg') });
  } else {
    pen.strokeStyle = of('bg');
    pen.lineWidth = 3;
    letters(pen, sheet, { text: glyph.text, fill: of('ink'), halo: true });
  }
}

interface Disc {
  readonly radius: number;
  readonly fill?: string;
  readonly line: string;
  readonly width: number;
}

function disc(pen: Pen, { width: w, height: h }: Sheet, { radius, fill, line, width }: Disc): void {
  pen.beginPath();
  pen.arc(w / 2, h / 2, radius, 0, 2 * Math.PI);
  if (fill) {
    pen.fillStyle = fill;
    pen.fill();
  }
  pen.strokeStyle = line;
  pen.lineWidth = width;
  pen.stroke();
}

function arc(
  pen: Pen,
  {
    x,
    y,
    radius,
    line,
  }: { readonly x: number; readonly y: number; readonly radius: number; readonly line: string },
): void {
  pen.beginPath();
  pen.arc(x, y, radius, Math.PI, 1.6 * Math.PI);
  pen.strokeStyle = line;
  pen.lineWidth = 1.6;
  pen.stroke();
}

function letters(
  pen: Pen,
  { width, height }: Sheet,
  { text, fill, halo = false }: { readonly text: string; readonly fill: string; readonly halo?: boolean },
): void {
  pen.font = FONT;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  if (halo) pen.strokeText(text, width / 2, height / 2 + 0.5);
  pen.fillStyle = fill;
  pen.fillText(text, width / 2, height / 2 + 0.5);
}

function tag(pen: Pen, sheet: Sheet, { text, strong }: Glyph & { readonly kind: 'tag' }): void {
  const { width, height, css: of } = sheet;
  pen.beginPath();
  pen.roundRect(1.5, 1.5, width - 3, height - 3, 8);
  pen.fillStyle = of(strong ? 'select' : 'bg');
  pen.globalAlpha = strong ? 1 : 0.86;
  pen.fill();
  pen.globalAlpha = strong ? 1 : 0.4;
  pen.strokeStyle = of('ink');
  pen.lineWidth = 1;
  pen.stroke();
  pen.globalAlpha = 1;
  letters(pen, sheet, { text, fill: of(strong ? 'bg' : 'ink') });
}

function corner(pen: Pen, sheet: Sheet, { square, tone }: Glyph & { readonly kind: 'corner' }): void {
  const { css: of } = sheet;
  const half = tone === 'rest' ? 4 : 6.5;
  pen.beginPath();
  if (square) pen.rect(10 - half, 10 - half, 2 * half, 2 * half);
  else pen.arc(10, 10, half, 0, 2 * Math.PI);
  pen.fillStyle = of(tone === 'rest' ? 'bg' : tone === 'chosen' ? 'select' : 'fail');
  pen.fill();
  pen.strokeStyle = of(tone === 'rest' ? 'ink' : 'bg');
  pen.lineWidth = tone === 'rest' ? 1.5 : 2;
  pen.stroke();
  if (tone === 'misfit') cross(pen, of('bg'));
}

function cross(pen: Pen, line: string): void {
  pen.beginPath();
  for (const side of [-1, 1]) {
    pen.moveTo(10 - 3 * side, 7);
    pen.lineTo(10 + 3 * side, 13);
  }
  pen.strokeStyle = line;
  pen.lineWidth = 2;
  pen.stroke();
}

function bubble(pen: Pen, sheet: Sheet): void {
  const { css: of } = sheet;
  disc(pen, sheet, { radius: 8, fill: of('bg'), line: of('ink'), width: 2 });
  arc(pen, { x: 8.5, y: 8.5, radius: 2.2, line: of('ink') });
}

/** The ring tells it from liquid that stays. */
function running(pen: Pen, sheet: Sheet): void {
  const { width, height, css: of } = sheet;
  disc(pen, sheet, { radius: 13, fill: of('bg'), line: of('select'), width: 2.5 });
  pen.save();
  pen.translate(width / 2, height / 2 - 0.5);
  pen.scale(0.66, 0.66);
  pen.translate(-10, -13);
  drop(pen, sheet, of('select'));
  pen.restore();
}

function drop(pen: Pen, { css: of }: Sheet, fill: string): void {
  pen.beginPath();
  pen.moveTo(10, 2);
  pen.bezierCurveTo(12, 8, 17, 11, 17, 17);
  pen.arc(10, 17, 7, 0, Math.PI);
  pen.bezierCurveTo(3, 11, 8, 8, 10, 2);
  pen.strokeStyle = of('bg');
  pen.lineWidth = 3;
  pen.stroke();
  pen.fillStyle = fill;
  pen.fill();
  pen.beginPath();
  pen.arc(10, 17, 4, 0.55 * Math.PI, Math.PI);
  pen.strokeStyle = of('bg');
  pen.lineWidth = 1.4;
  pen.stroke();
}
