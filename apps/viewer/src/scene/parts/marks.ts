/** Letters, numbers, drops and the handles of the corners: everything that keeps its size on the screen. */
import { type PocketPlace, pointAt, scale, sub, type Vec3 } from 'runback';
import { amountText, type Staying, shownPockets, signScale } from '../../pockets/index.ts';
import { endOf } from '../shape/line-parts.ts';
import type { Mark } from './billboards.ts';
import type { Shown } from './kinds.ts';
import { misfitPoints } from './misfit.ts';

const TAG_PX = 16;
const END_PX = 24;
/** From the middle of the tube to the middle of a sign of 1 ml, and from there to the middle of its figure. */
const SIGN_PX = 18;
const FIGURE_PX = 22;
/** Signs come in few sizes, so that few pictures of them are kept. */
const SIZES = 10;

/** All marks of the chosen line, the most important first. `points` are its corners, the dragged one where it is. */
export function marksOf(now: Shown, points: readonly Vec3[]): readonly Mark[] {
  const staying = [...liquid(now), ...drop(now)];
  return [...handles(now, points), ...findingRing(now), ...ends(now, points), ...staying, ...tags(now)];
}

function handles({ line, state }: Shown, points: readonly Vec3[]): readonly Mark[] {
  const misfits = misfitPoints(line);
  const last = points.length - 1;
  return points.map((at, index) => {
    const chosen = state.selection?.kind === 'point' && state.selection.index === index;
    const tone = misfits.has(index) ? 'misfit' : chosen ? 'chosen' : 'rest';
    const square = index === 0 || index === last;
    return { glyph: { kind: 'corner', square, tone }, at, order: tone === 'rest' ? 1 : 6, gives: false };
  });
}

function findingRing({ line, state }: Shown): readonly Mark[] {
  if (state.selection?.kind !== 'finding') return [];
  const at = line.findings[state.selection.index]?.point;
  return at ? [{ glyph: { kind: 'ring' }, at, order: 0, gives: false }] : [];
}

/** Beyond the ends; of a line that cannot exist, beyond its first and last point. */
function ends({ centreline, stale }: Shown, points: readonly Vec3[]): readonly Mark[] {
  return (['A', 'Z'] as const).flatMap((name): readonly Mark[] => {
    const [at, next] = name === 'A' ? [points[0], points[1]] : [points.at(-1), points.at(-2)];
    if (!at || !next) return [];
    const along = centreline && !stale ? endOf(centreline, name).out : sub(at, next);
    return [{ glyph: { kind: 'end', text: name }, at, push: { along, px: END_PX }, order: 5, gives: false }];
  });
}

/** Where liquid stays in the present tilt, under the tube, and where air does, over it, each with how much. */
function liquid({ stale, state: { pockets } }: Shown): readonly Mark[] {
  if (pockets === null || stale) return [];
  return [
    ...shownPockets(pockets.liquid).flatMap((pocket) => pocketMarks(pocket, 'liquid')),
    ...shownPockets(pockets.air).flatMap((pocket) => pocketMarks(pocket, 'air')),
  ];
}

function pocketMarks({ point: at, volume }: PocketPlace, stays: Staying): readonly Mark[] {
  const times = Math.round(signScale(volume) * SIZES) / SIZES;
  const [kind, way, order] = stays === 'liquid' ? (['drop', -1, 4] as const) : (['bubble', 1, 3] as const);
  const lift = way * SIGN_PX * times;
  const figure = { kind: 'amount', text: amountText(stays, volume) } as const;
  return [
    { glyph: { kind, times }, at, lift, order, gives: false },
    { glyph: figure, at, lift: lift + way * FIGURE_PX * times, order, gives: false },
  ];
}

/** The drop of the pour test, on the line. */
function drop({ centreline, stale, state }: Shown): readonly Mark[] {
  if (state.drop === null || !centreline || stale) return [];
  const at = pointAt(centreline, Math.min(Math.max(state.drop, 0), centreline.length));
  return [{ glyph: { kind: 'running' }, at, order: 7, gives: false }];
}

/** Beside each bend, on its inner side: its corner is on the other. */
function tags({ line, centreline, stale, state }: Shown): readonly Mark[] {
  if (!centreline || stale) return [];
  const chosen = selectedBend(line, state);
  const marks = centreline.bends.flatMap(({ piece, angle }, index): readonly Mark[] => {
    const arc = centreline.pieces[piece]!;
    if (arc.kind !== 'arc') return [];
    const half = angle / 2;
    const out: Vec3 = sub(scale(arc.u, Math.cos(half)), scale(arc.v, -Math.sin(half)));
    const at: Vec3 = sub(arc.centre, scale(out, -arc.radius));
    const push = { along: scale(out, -1), px: TAG_PX, mm: line.line.tube.od / 2 };
    const strong = chosen === index;
    const glyph = { kind: 'tag', text: `B${index + 1}`, strong } as const;
    return [{ glyph, at, push, order: 2, gives: !strong }];
  });
  return marks.sort((a, b) => Number(a.gives) - Number(b.gives));
}

const selectedBend = ({ findings }: Shown['line'], { selection }: Shown['state']): number | null => {
  if (selection?.kind === 'bend') return selection.index;
  const bend = selection?.kind === 'finding' ? findings[selection.index]?.bend : null;
  return bend ? bend - 1 : null;
};
