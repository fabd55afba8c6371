/** A page of the display list as PDF operators. */
import { CAP_EM, cleanText } from './measure.ts';
import { cubics } from './pdf-arc.ts';
import type { Face } from './pdf-face.ts';
import { mm, ratio } from './pdf-number.ts';
import type {
  Grey,
  GroupItem,
  Item,
  Page,
  PathStep,
  Point,
  RectItem,
  Stroke,
  TextItem,
  Weight,
} from './types.ts';

export type Faces = Readonly<Record<Weight, Face>>;

/** The names the fonts go by in every page. */
export const FONT_NAMES: Readonly<Record<Weight, string>> = { regular: 'F1', bold: 'F2' };

/** Points of 1/72 in. */
export const POINTS_PER_MM = 72 / 25.4;

/** What draws the page, in its own millimetres from the top left. Fills the faces with the letters it needs. */
export function pageContent(page: Page, faces: Faces): string {
  const k = ratio(POINTS_PER_MM);
  const top = ratio(page.height * POINTS_PER_MM);
  return [`${k} 0 0 -${k} 0 ${top} cm`, '1 j', ...page.items.flatMap((item) => draw(item, faces))].join('\n');
}

function draw(item: Item, faces: Faces): string[] {
  switch (item.kind) {
    case 'line':
      return path(
        [
          ['M', ...item.from],
          ['L', ...item.to],
        ],
        { stroke: item.stroke },
      );
    case 'rect':
      return path(rectangle(item), item);
    case 'circle':
      return path(circle(item.centre, item.radius), item);
    case 'path':
      return path(item.steps, item);
    case 'text':
      return text(item, faces);
    case 'group':
      return group(item, faces);
  }
}

interface Paint {
  readonly fill?: Grey;
  readonly stroke?: Stroke;
}

function path(steps: readonly PathStep[], { fill, stroke }: Paint): string[] {
  const pen = stroke && stroke.width > 0 ? stroke : undefined;
  if (steps.length === 0 || (fill === undefined && !pen)) return [];
  const how = fill === undefined ? 'S' : pen ? 'B' : 'f';
  return [
    ...(fill === undefined ? [] : [`${grey(fill)} g`]),
    ...(pen ? penOf(pen) : []),
    ...trace(steps),
    how,
  ];
}

/** The same 256 greys as on the screen. */
function grey(level: Grey): string {
  return mm(Math.round(Math.min(1, Math.max(0, level)) * 255) / 255);
}

function penOf({ width, grey: level, dash = [], cap }: Stroke): string[] {
  const broken = dash.some((length) => Number(mm(length)) > 0) ? dash : [];
  return [`${grey(level)} G ${mm(width)} w ${cap === 'round' ? 1 : 0} J [${broken.map(mm).join(' ')}] 0 d`];
}

/** The steps as operators. An arc starts where the step before it ended. */
function trace(steps: readonly PathStep[]): string[] {
  let [at, opened]: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  return steps.flatMap((step) => {
    const from = at;
    if (step[0] === 'Z') {
      at = opened;
      return ['h'];
    }
    at = step.slice(-2) as unknown as Point;
    if (step[0] === 'M') opened = at;
    if (step[0] === 'A') return arc(from, step);
    const operator = { M: 'm', L: 'l', C: 'c' }[step[0]];
    return [`${(step.slice(1) as number[]).map(mm).join(' ')} ${operator}`];
  });
}

function arc(
  from: Point,
  [, radius, large, clockwise, x, y]: Extract<PathStep, readonly ['A', ...unknown[]]>,
) {
  // As in SVG: an arc of no radius is a straight.
  if (radius === 0) return [`${mm(x)} ${mm(y)} l`];
  const curves = cubics(from, { radius, large: large === 1, clockwise: clockwise === 1, to: [x, y] });
  return curves.map((curve) => `${curve.map(mm).join(' ')} c`);
}

function rectangle({ x, y, width, height, round = 0 }: RectItem): PathStep[] {
  const r = Math.min(round, width / 2, height / 2);
  const [right, bottom] = [x + width, y + height];
  const corner = (toX: number, toY: number): PathStep[] => (r > 0 ? [['A', r, 0, 1, toX, toY]] : []);
  if (!(width > 0 && height > 0)) return [];
  return [
    ['M', x + r, y],
    ['L', right - r, y],
    ...corner(right, y + r),
    ['L', right, bottom - r],
    ...corner(right - r, bottom),
    ['L', x + r, bottom],
    ...corner(x, bottom - r),
    ['L', x, y + r],
    ...corner(x + r, y),
    ['Z'],
  ];
}

function circle([x, y]: Point, radius: number): PathStep[] {
  if (!(radius > 0)) return [];
  const quarter = (dx: number, dy: number): PathStep => ['A', radius, 0, 1, x + dx * radius, y + dy * radius];
  return [['M', x + radius, y], quarter(0, 1), quarter(-1, 0), quarter(0, -1), quarter(1, 0), ['Z']];
}

function text(item: TextItem, faces: Faces): string[] {
  const { fill, outline, anchor } = item;
  const words = cleanText(item.text);
  if (words === '' || (fill === null && !outline)) return [];
  const { codes, em } = faces[item.weight].set(words);
  const size = item.cap / CAP_EM;
  const x = item.x - em * size * { start: 0, middle: 0.5, end: 1 }[anchor];
  const mode = fill === null ? 1 : outline ? 2 : 0;
  return [
    ...(fill === null ? [] : [`${grey(fill)} g`]),
    ...(outline ? penOf(outline) : []),
    // Turned over again: the page counts y downwards, letters stand upwards.
    `BT ${mode} Tr /${FONT_NAMES[item.weight]} ${mm(size)} Tf 1 0 0 -1 ${mm(x)} ${mm(item.y)} Tm ${codes} Tj ET`,
  ];
}

function group(item: GroupItem, faces: Faces): string[] {
  const { at, turn = 0, clip } = item;
  const angle = (turn * Math.PI) / 180;
  const [c, s, back] = [Math.cos(angle), Math.sin(angle), -Math.sin(angle)].map(ratio);
  return [
    `q ${c} ${s} ${back} ${c} ${mm(at[0])} ${mm(at[1])} cm`,
    ...(clip ? [`${[clip.x, clip.y, clip.width, clip.height].map(mm).join(' ')} re W n`] : []),
    ...item.items.flatMap((inner) => draw(inner, faces)),
    'Q',
  ];
}
