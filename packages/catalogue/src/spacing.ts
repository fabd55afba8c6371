/** How far to keep off, and how far apart clips may stand. */
import type { Catalogue, ClipSpacing } from '@runback/job';
import { figure, inch, inches, MEMORY, PRACTICE } from './sourcing.ts';

const TABLE_II =
  'MIL-H-8891A Table II (para 3.11.4.3), hydraulic tube; pairing with the OD inferred from a scan; 20 % less where the tube carries a union or tee';
const HANDBOOK = `aircraft handbook table for steel tube, ${MEMORY}; aluminium about 15 % less`;

/** OD and greatest distance as printed, inches. */
const PRINTED: readonly (readonly [od: number, spacing: number, source: string])[] = [
  [1 / 8, 11.5, HANDBOOK],
  [3 / 16, 14, HANDBOOK],
  [1 / 4, 16, TABLE_II],
  [5 / 16, 18, TABLE_II],
  [3 / 8, 20, TABLE_II],
  [1 / 2, 23, TABLE_II],
  [5 / 8, 25.5, TABLE_II],
  [3 / 4, 27.5, TABLE_II],
  [1, 30, TABLE_II],
  [1.25, 31.5, TABLE_II],
  [1.5, 32.5, TABLE_II],
];

/** A tube between two printed sizes takes the nearer: a row serves up to half way to the next. */
export const clipSpacing: readonly ClipSpacing[] = PRINTED.map(([od, spacing, source], i) => {
  const next = PRINTED[i + 1]?.[0] ?? od;
  return { od: inch((od + next) / 2), spacing: inches(spacing, `${source}: ${spacing} in for ${od} in`) };
});

export const keepOff: Catalogue['keepOff'] = {
  hot: inches(3, 'truck body-builder manual (2009), Table 9-1: tube to exhaust without a shield, 3 in'),
  moving: inches(3 / 4, 'workshop manuals, brake pipes to moving or shaking parts: at least 3/4 in (19 mm)'),
  fixed: figure(
    5,
    'workshop manual clearance list (2009), smallest gap between fixed engine-bay parts: 5 mm, most 10 mm',
  ),
  wiring: inches(2, 'AC 43.13-1B p. 11-44: 6 in, at least 2 in where both are clamped; the line goes below'),
};

export const clearance: Catalogue['clearance'] = {
  self: figure(10, PRACTICE),
  lines: figure(
    10,
    'workshop manual clearance list (2009), engine-bay pipes to their neighbours: mostly 10 mm',
  ),
};

export const minRadiusOverOd = figure(
  3,
  'UFC 3-600-01 6-15.2.3 and a 1980 magazine guide to tube bending: centreline radius at least 3 × OD',
);

export const spareZ = figure(25, PRACTICE);
