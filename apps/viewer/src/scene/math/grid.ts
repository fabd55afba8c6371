/** The ground grid. */
import { parseLength } from 'runback';

const INCH_MM = parseLength('1', 'in');
/** Lines across the radius of everything. */
const ACROSS = 8;

/** Distance of two lines of the grid, mm: 1, 2 or 5 of the job's unit with noughts, so that a dozen or so cross what stands there. */
export function gridStepFor(radius: number, units: 'mm' | 'in'): number {
  const unit = units === 'in' ? INCH_MM : 1;
  const wanted = Math.max(radius / unit, 1) / ACROSS;
  const ten = 10 ** Math.floor(Math.log10(wanted));
  return ([5, 2, 1].map((k) => k * ten).find((step) => step <= wanted) ?? ten) * unit;
}
