/** How the aids say what is finer than a tape reads, and which bends. */
import { type LengthStyle, MM_PER_INCH } from '@runback/job';

/** A small length with its unit: hundredths of a millimetre (tenths from 1 mm up), thousandths of an inch. */
export function fine(mm: number, unit: LengthStyle): string {
  if (unit !== 'mm') return `${Number((mm / MM_PER_INCH).toFixed(3))} in`;
  return `${Number(mm.toFixed(mm < 2 ? 2 : 1))} mm`;
}

/** `bend 4`, `bends 1, 3`, `bends 1–5, 9` */
export function bendNames(bends: readonly number[]): string {
  const runs: number[][] = [];
  for (const bend of bends) {
    const last = runs.at(-1);
    if (last?.at(-1) === bend - 1) last.push(bend);
    else runs.push([bend]);
  }
  const said = runs.flatMap((run) => (run.length > 2 ? [`${run[0]}–${run.at(-1)}`] : run.map(String)));
  return `${bends.length > 1 ? 'bends' : 'bend'} ${said.join(', ')}`;
}
