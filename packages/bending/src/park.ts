/** Where nuts and sleeves stay. Millimetres from the finished end. */
import { POINT_MM } from '@runback/geometry';
import type { LengthStyle, Line } from '@runback/job';
import { endOf, formedBefore } from './ends.ts';
import { nutPassesRadius } from './nut.ts';
import { endWords, otherEnd, sayLength } from './say.ts';
import type { BendPlan, EndName, Park } from './types.ts';

/**
 * Where each nut and sleeve stays: on the straight of its own end, as it passes no bend. Up against the end formed
 * before bending while the tube is bent; back against the first bend while an end is formed after it.
 */
export function parksOf(line: Line, plan: BendPlan, unit: LengthStyle): readonly Park[] {
  const first = plan.rows[0]?.straightBefore ?? plan.developedLength;
  const said = (park: Omit<Park, 'words'>): Park => ({
    ...park,
    words: parkWords(park, formedBefore(endOf(line, park.end)), unit),
  });
  return [...parksAt(line, plan.from, first), ...parksAt(line, otherEnd(plan.from), plan.lastStraight)].map(
    said,
  );
}

function parksAt(line: Line, end: EndName, straight: number): readonly Omit<Park, 'words'>[] {
  const lineEnd = endOf(line, end);
  const { nut, sleeve } = lineEnd;
  const both = (nut?.length ?? 0) + (sleeve?.length ?? 0);
  // From the end: sleeve, then nut.
  const near = formedBefore(lineEnd) ? 0 : straight - both;
  const parks: Omit<Park, 'words'>[] = [];
  const shared = { end, straight, fits: both <= straight + POINT_MM };
  if (nut)
    parks.push({
      ...shared,
      part: 'nut',
      length: nut.length,
      park: near + (sleeve?.length ?? 0),
      passesRadius: nutPassesRadius(nut, line.tube.od),
    });
  if (sleeve)
    parks.push({ ...shared, part: 'sleeve', length: sleeve.length, park: near, passesRadius: null });
  return parks;
}

function parkWords(park: Omit<Park, 'words'>, formed: boolean, unit: LengthStyle): string {
  const name = `${park.part.toUpperCase()} ${park.end}`;
  const within = `within ${sayLength(park.straight, unit)} of ${endWords(park.end)}`;
  if (!park.fits) return `${name} does not fit on its straight: it must stay ${within}`;
  const place = formed ? `up against ${endWords(park.end)}` : 'back against the bend while the end is formed';
  return `${name}: ${place}; it passes no bend, so it stays ${within}`;
}
