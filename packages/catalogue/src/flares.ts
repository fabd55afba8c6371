/** Finished flare diameters and the thickest wall each is made on, by tube OD. mm. */
import type { CatalogueFlare } from '@runback/job';

const SOURCE = 'SAE J533 (2024), 45° flares, as excerpted';

type Row = readonly [od: number, least: number, most: number, maxWall: number];

const flares = (rows: readonly Row[]): readonly CatalogueFlare[] =>
  rows.map(([od, least, most, maxWall]) => ({ od, diameter: [least, most], maxWall, source: SOURCE }));

export const singleFlares45 = flares([
  [3.18, 4.4, 4.6, 0.89],
  [4.76, 6.1, 6.3, 0.89],
  [6.35, 8.0, 8.3, 1.24],
  [7.94, 9.9, 10.3, 1.24],
]);

export const doubleFlares45 = flares([
  [3.18, 5.0, 5.4, 0.63],
  [4.76, 6.7, 7.1, 0.71],
  [6.35, 8.7, 9.1, 0.83],
  [7.94, 10.4, 10.8, 0.89],
]);
