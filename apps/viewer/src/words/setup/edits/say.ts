/** Figures and sizes in words. */
import { formatLength, type JobUnit, type Line, parseLength } from 'runback';
import { writtenOf } from './written.ts';

/** A figure with where it comes from. */
export type Figure = Line['clearance']['self'];

/** Where a figure comes from that is not written in the field itself. */
export function sourceOf({ source, path }: Figure): string {
  if (path === null) return `from the catalogue: ${source}`;
  if (path.endsWith('.rule')) return 'by the rule above';
  if (path.startsWith('benders')) return 'from the job: the tail of the die';
  return path.startsWith('services') ? 'from the job: this service' : 'from the job: its own figures';
}

const SIXTY_FOURTHS = 64;
const SAME_MM = 1e-6;

/** A size of the catalogue without loss: in an inch job 3/8, 0.035 or 12 mm; in a mm job 12 or 9.525. */
export function sayExact(mm: number, units: JobUnit): string {
  if (units === 'mm') return String(writtenOf(mm, units));
  const fraction = formatLength(mm, 'in', { denominator: SIXTY_FOURTHS, bare: true });
  const exact = Math.abs(parseLength(fraction, 'in') - mm) < SAME_MM;
  return exact ? fraction : String(writtenOf(mm, units));
}
