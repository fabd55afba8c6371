/** One view of the whole line: the tube, its ends and bends named, its overall dimensions. */
import type { Centreline } from '@runback/geometry';
import type { LengthStyle } from '@runback/job';
import { type Barrier, barriersOf, type LabelAsk, placeLabels } from './page-labels.ts';
import { extent, laid, type Projection, placesAlong, project, type Spot } from './picture-project.ts';
import { tubeItems } from './picture-tube.ts';
import type { Part } from './set.ts';
import type { Box, Item, Point, Zone } from './types.ts';
import { across, DIMENSION_OUT, type Dimension, upright } from './views-dimension.ts';
import { length } from './words.ts';

/** What every view of a line is drawn from. */
export interface Subject {
  readonly centreline: Centreline;
  readonly od: number;
  readonly unit: LengthStyle;
  /** The name of a bend from its place along A→Z (0 …). */
  readonly bendName: (index: number) => string;
}

export interface ViewAsk {
  readonly projection: Projection;
  readonly scale: number;
  readonly zone: Zone;
  /** Overall dimensions are printed. */
  readonly dimensions: boolean;
  /** What stands in the zone already. */
  readonly taken?: readonly Box[];
}

export interface View {
  readonly part: Part;
  /** Names there was no room for. */
  readonly lost: readonly string[];
}

/** Air round the tube, mm: room for names and dimensions. */
export const MARGIN = { left: 11, right: 23, top: 9, bottom: 14 } as const;
/** A tube thinner than this on the paper is drawn as one line. mm */
const LEAST_OUTLINE = 1.5;
const LEAST_LINE = 0.7;

/** Width and height of the line in a projection, mm of the thing. */
export function sizeIn({ centreline, od }: Subject, projection: Projection): readonly [number, number] {
  const { low, high } = extent(spotsOf(centreline, projection));
  return [high[0] - low[0] + od, high[1] - low[1] + od];
}

const spotsOf = ({ pieces }: Centreline, projection: Projection): readonly Spot[] =>
  placesAlong(pieces).map((place) => project(place, projection));

/** The view in the middle of its zone. */
export function view(subject: Subject, ask: ViewAsk): View {
  const { centreline, od } = subject;
  const { projection, scale, zone } = ask;
  const plain = spotsOf(centreline, projection);
  const { low, high } = extent(plain);
  const middle = (axis: 0 | 1): number => ((low[axis] + high[axis]) / 2) * scale;
  const at: Point = [
    zone.x + (zone.width + MARGIN.left - MARGIN.right) / 2 - middle(0),
    zone.y + (zone.height + MARGIN.top - MARGIN.bottom) / 2 - middle(1),
  ];
  const spots = laid(plain, { scale, at });
  const width = od * scale;
  const outline = width >= LEAST_OUTLINE;
  const style = {
    width: outline ? width : Math.max(width, LEAST_LINE),
    as: outline ? 'outline' : 'solid',
  } as const;
  const points = spots.map((spot) => spot.at);
  const dimensions = ask.dimensions ? dimensionsOf(subject, spots, ask) : [];
  const barriers: readonly Barrier[] = [
    ...barriersOf(points, style.width),
    ...dimensions.flatMap((d) => d.barriers),
  ];
  const labels = placeLabels(
    names(subject, (s) => laid([project(s, projection)], { scale, at })[0]!.at),
    {
      bounds: zone,
      barriers,
      taken: [...dimensions.map((d) => d.box), ...(ask.taken ?? [])],
      zone: zone.name,
    },
  );
  const items: readonly Item[] = [
    ...tubeItems(spots, { ...style, name: 'tube' }),
    ...dimensions.flatMap((d) => d.items),
    ...labels.items,
  ];
  return { part: { zones: [zone], items }, lost: labels.lost };
}

const NAME = 2.4;
const END = 2.8;

/** A and Z, then the bends. */
function names(
  subject: Subject,
  at: (place: Centreline['pieces'][number]['from']) => Point,
): readonly LabelAsk[] {
  const { pieces, bends } = subject.centreline;
  const end = { cap: END, weight: 'bold', tag: true } as const;
  return [
    { ...end, text: 'A', at: at(pieces[0]!.from), name: 'end A' },
    { ...end, text: 'Z', at: at(pieces.at(-1)!.to), name: 'end Z' },
    ...bends.map((bend, i): LabelAsk => {
      const text = subject.bendName(i);
      return { text, cap: NAME, weight: 'bold', at: at(middleOf(pieces[bend.piece]!)), name: text };
    }),
  ];
}

/** The middle of a bend; near enough on its chord for a name to point at. */
function middleOf(piece: Centreline['pieces'][number]): Centreline['pieces'][number]['from'] {
  const places = placesAlong([piece]);
  return places[Math.floor(places.length / 2)]!;
}

/** How far it reaches across and up, to the centreline; nothing where it does not reach at all. */
function dimensionsOf(
  subject: Subject,
  spots: readonly Spot[],
  { scale, zone }: ViewAsk,
): readonly Dimension[] {
  const { low, high } = extent(spots);
  const [wide, tall] = [high[0] - low[0], high[1] - low[1]];
  const said = (paper: number): string => length(paper / scale, subject.unit);
  const reach = (subject.od * scale) / 2;
  const level = {
    zone: zone.name,
    from: low[0],
    to: high[0],
    line: high[1] + reach + DIMENSION_OUT,
    edge: high[1] + reach,
  };
  const plumb = {
    zone: zone.name,
    from: low[1],
    to: high[1],
    line: high[0] + reach + DIMENSION_OUT,
    edge: high[0] + reach,
  };
  return [
    ...(said(wide) === '0' ? [] : [across({ ...level, text: said(wide) })]),
    ...(said(tall) === '0' ? [] : [upright({ ...plumb, text: said(tall) })]),
  ];
}
