/** Pictures compared as a person does from across the shop: coarse and grey, so that no smoothing of an edge counts. */
import { PNG } from 'pngjs';

const ACROSS = 64;
const DOWN = 48;

/** Greatest mean difference, and greatest in one cell, of 255. */
const MEAN = 6;
const CELL = 60;

/** Mean grey of each cell of a picture parted into `across` × `down`, row by row. */
export function greyCells(
  { width, height, data }: PNG,
  across: number = ACROSS,
  down: number = DOWN,
): readonly number[] {
  const sums = new Float64Array(across * down);
  const counts = new Float64Array(across * down);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 4;
      const cell = Math.floor((y * down) / height) * across + Math.floor((x * across) / width);
      sums[cell]! += 0.299 * data[i]! + 0.587 * data[i + 1]! + 0.114 * data[i + 2]!;
      counts[cell]! += 1;
    }
  return Array.from(sums, (sum, i) => sum / (counts[i] || 1));
}

/** Half as wide and high, in greys: small enough to keep, large enough to look at. */
export function keepable(picture: PNG): Buffer {
  const [width, height] = [picture.width >> 1, picture.height >> 1];
  const half = new PNG({ width, height });
  for (const [i, grey] of greyCells(picture, width, height).entries())
    half.data.set([grey, grey, grey, 255], i * 4);
  return PNG.sync.write(half, { colorType: 0 });
}

/** How two pictures differ, in words; null when they are the same to the eye. */
export function pictureFault(found: PNG, kept: PNG): string | null {
  const was = greyCells(kept);
  const off = greyCells(found).map((grey, i) => Math.abs(grey - was[i]!));
  const mean = off.reduce((sum, one) => sum + one, 0) / off.length;
  const worst = Math.max(...off);
  if (mean <= MEAN && worst <= CELL) return null;
  const [column, row] = [off.indexOf(worst) % ACROSS, Math.floor(off.indexOf(worst) / ACROSS)];
  return `differ by ${mean.toFixed(1)} of 255 in the mean, by ${worst.toFixed(0)} at column ${column}, row ${row} of ${ACROSS} × ${DOWN}`;
}
