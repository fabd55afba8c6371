/** The page of the whole line: one isometric picture and three views. */
import type { BenchPlan } from '@runback/bending';
import type { Centreline, MachineAxes } from '@runback/geometry';
import { type Body, bodyZone } from './page-paper.ts';
import { isometric } from './picture-project.ts';
import { cell, joined, line, type Part, pen, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import type { Point, Zone } from './types.ts';
import { axesPicture } from './views-axes.ts';
import { scaleWords, standardScale } from './views-scale.ts';
import { projectionSymbol, SYMBOL } from './views-symbol.ts';
import { type Drawn, TITLE, threeViews, title, withMargin } from './views-three.ts';
import { type Subject, sizeIn, view } from './views-view.ts';
import { height as wholeLength } from './words.ts';

const HEAD = 6;
const STRIP = 17;

/** One page; nothing for a line that cannot exist. */
export function viewBodies(context: SheetContext): readonly Body[] {
  const { centreline } = context.worked;
  if (centreline === null) return [];
  return [{ name: 'whole line', part: page(context, subjectOf(context, centreline)) }];
}

function subjectOf({ worked, plan }: SheetContext, centreline: Centreline): Subject {
  const bends = centreline.bends.length;
  return {
    centreline,
    od: worked.line.tube.od,
    unit: plan.unit,
    bendName: (index) => (plan.from === 'A' ? `B${index + 1}` : `${bends - index} (B${index + 1})`),
  };
}

export const projectionAngle = ({ options, plan }: SheetContext): 'first' | 'third' =>
  options.projection ?? (plan.unit === 'mm' ? 'first' : 'third');

function page(context: SheetContext, subject: Subject): Part {
  const { worked, plan, options } = context;
  const body = bodyZone(options.paper);
  const angle = projectionAngle(context);
  const tall = body.height - HEAD - STRIP;
  const iso = { ...body, name: 'isometric', y: body.y + HEAD, height: tall * 0.42 };
  const views = { ...body, y: iso.y + iso.height, height: tall * 0.58 };
  const picture = isometricView(subject, worked.line.axes, iso);
  const three = threeViews(subject, worked.line.axes, { area: views, angle });
  const notes = { ...body, name: 'views notes', y: body.y + body.height - STRIP, height: STRIP };
  return joined([
    { zones: [], items: [line([body.x, body.y], [body.x + body.width, body.y], pen(0.8))] },
    cell(zone('views head', [body.x, body.y + 1.2], [body.width, 4.4]), 'WHOLE LINE', {
      cap: 3.4,
      weight: 'bold',
    }),
    picture.part,
    three.part,
    strip({
      plan,
      place: notes,
      angle,
      scale: three.scale,
      lost: [...new Set([...picture.lost, ...three.lost])],
    }),
  ]);
}

const AXES_ROOM = 26;

function isometricView(subject: Subject, axes: MachineAxes, area: Zone): Drawn {
  const projection = isometric(axes);
  const size = sizeIn(subject, projection);
  const place = { ...area, y: area.y + TITLE, height: area.height - TITLE };
  const scale = standardScale((s) => {
    const [width, height] = withMargin(size, s);
    return width + AXES_ROOM <= place.width && height <= place.height;
  });
  const corner: Point = [place.x, place.y + place.height - AXES_ROOM];
  const room = { ...place, x: place.x + AXES_ROOM, width: place.width - AXES_ROOM };
  const drawn = view(subject, { projection, scale, zone: room, dimensions: false });
  return {
    scale,
    lost: drawn.lost,
    part: joined([
      title(
        area,
        `isometric, ${scaleWords(scale)}, seen from above, from the left front corner of the machine`,
      ),
      axesPicture(axes, projection, corner),
      drawn.part,
    ]),
  };
}

interface Strip {
  readonly plan: BenchPlan;
  readonly place: Zone;
  readonly angle: 'first' | 'third';
  readonly scale: number;
  readonly lost: readonly string[];
}

const numbering = ({ from }: BenchPlan): string =>
  from === 'A'
    ? 'Bends are numbered from END A.'
    : 'Bends are numbered as they are made, from END Z; in brackets as the findings count them, from END A.';

/** Projection symbol, scale, and what the figures are measured to. */
function strip({ plan, place, angle, scale, lost }: Strip): Part {
  const { x, y, width, height } = place;
  const unit = plan.unit === 'mm' ? 'mm' : 'inches';
  const words = [
    `Three views ${scaleWords(scale)}, ${angle}-angle projection. Figures in ${unit}, to the centreline.`,
    `END A to END Z, centre to centre: ${wholeLength(plan.final.endToEnd, plan.unit)}. ${numbering(plan)}`,
    lost.length > 0 ? `No room to name ${lost.join(', ')} in every view.` : '',
  ];
  return joined([
    {
      zones: [],
      items: [line([x, y + 0.5], [x + width, y + 0.5], pen(0.4)), ...projectionSymbol([x, y + 3], angle)],
    },
    cell(
      zone('views words', [x + SYMBOL[0] + 4, y + 1.6], [width - SYMBOL[0] - 4, height - 2]),
      words.join(' ').trim(),
      {
        cap: 2.8,
        minCap: 1.6,
        lines: 6,
        first: 'wrap',
        at: 'top',
      },
    ),
  ]);
}
