import { RADIUS_MM } from '@runback/geometry';
import type { FlareSize, LineEnd } from '@runback/job';
import { finding, unjudged } from '../finding.ts';
import type { Finding } from '../types.ts';
import { thickness } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'flare';
const BASIS =
  'thickest wall a flare is made on, and its finished diameter against the bore of the nut behind it';

/** The wall is thin enough for the flare that is asked for, and the flare is larger than the nut's bore. */
export function flare(work: Work): Finding[] {
  const { endA, endZ } = work.line;
  return [...atEnd(work, endA, 'A'), ...atEnd(work, endZ, 'Z')];
}

function atEnd(work: Work, end: LineEnd, name: 'A' | 'Z'): Finding[] {
  const { flare: size, name: kind } = end.fitting;
  if (size === null) return [];
  const place = { at: name === 'A' ? 0 : work.centreline.length, path: `${end.path}.fitting` };
  if (size === 'no row') {
    const message = `End ${name}: no sizes are known for a ${kind} on this tube, so wall and nut are not judged.`;
    return [unjudged(CHECK, message, { ...place, basis: BASIS })];
  }
  return [wallThin(work, { size, place, name, kind }), ...nutHeld(work, end, { size, place, name, kind })];
}

interface At {
  readonly size: FlareSize;
  readonly place: { readonly at: number; readonly path: string };
  readonly name: 'A' | 'Z';
  readonly kind: string;
}

function wallThin({ line }: Work, { size, place, name, kind }: At): Finding {
  const { wall } = line.tube;
  const ok = wall <= size.maxWall.value + RADIUS_MM;
  const most = thickness(size.maxWall.value, line.units);
  const has = `End ${name}: the wall is ${thickness(wall, line.units)}`;
  return finding({
    check: CHECK,
    verdict: ok ? 'pass' : 'fail',
    message: ok
      ? `${has}; a ${kind} takes up to ${most}.`
      : `${has}, too thick for a ${kind}: ${most} at most.`,
    found: wall,
    limit: size.maxWall.value,
    unit: 'mm',
    ...place,
    basis: `${BASIS}; limit: ${size.maxWall.source}`,
  });
}

function nutHeld({ line }: Work, { nut, path }: LineEnd, { size, place, name }: At): Finding[] {
  if (nut === null || nut.bore === null) return [];
  const ok = nut.bore < size.diameter.value;
  const widths = `bore ${thickness(nut.bore, line.units)}, flare ${thickness(size.diameter.value, line.units)} at least`;
  return [
    finding({
      check: CHECK,
      verdict: ok ? 'pass' : 'fail',
      message: `End ${name}: the flare ${ok ? 'holds' : 'would slip through'} its nut (${widths}).`,
      found: nut.bore,
      limit: size.diameter.value,
      unit: 'mm',
      at: place.at,
      path: `${path}.nut.bore`,
      basis: `${BASIS}; limit: ${size.diameter.source}`,
    }),
  ];
}
