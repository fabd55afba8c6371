/** Putting pieces on pages in rows, in their order. */
import type { Box } from './types.ts';

export interface Sized {
  readonly width: number;
  readonly height: number;
}

export interface Shelved<T> {
  readonly piece: T;
  readonly x: number;
  readonly y: number;
}

/** A new row when a piece does not fit beside the last, a new page when it does not fit below. mm */
export function shelves<T extends Sized>(
  pieces: readonly T[],
  box: Box,
  apart: number,
): readonly (readonly Shelved<T>[])[] {
  const pages: Shelved<T>[][] = [];
  let [x, y, tall] = [box.x, box.y, 0];
  for (const piece of pieces) {
    if (x > box.x && x + piece.width > box.x + box.width) [x, y, tall] = [box.x, y + tall + apart, 0];
    if (pages.length === 0 || (y > box.y && y + piece.height > box.y + box.height)) {
      pages.push([]);
      [x, y, tall] = [box.x, box.y, 0];
    }
    pages.at(-1)?.push({ piece, x, y });
    x += piece.width + apart;
    tall = Math.max(tall, piece.height);
  }
  return pages;
}
