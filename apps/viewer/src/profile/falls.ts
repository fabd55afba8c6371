/** How much each straight falls and which way liquid runs on it, written along the line. */
import { cross, dot, norm, type ProfileFall, type ProfilePlace, type Verdict } from 'runback';
import { curveSpan } from './curve.ts';
import { small, xOf } from './frame.ts';
import { isFree, label, lineHeight } from './measure.ts';
import { degrees } from './say.ts';
import { type StraightSpan, spansOf } from './straights.ts';
import type { Box, Flow, Frame, Ink, Label, ProfileInput, Spot } from './types.ts';

export interface Falls {
  readonly flows: readonly Flow[];
  readonly labels: readonly Label[];
}

/** Room for the arrow before the angle. */
const ARROW = 15;
const OFF = 5;
/** Where along a straight the words may stand, the best first. */
const ALONG = [0.5, 0.38, 0.62, 0.26, 0.74];

interface Fall {
  readonly span: StraightSpan;
  readonly text: string;
  readonly to: 'A' | 'Z' | null;
  readonly verdict: Verdict | null;
}

export function fallsOf(
  frame: Frame,
  input: ProfileInput,
  { spots, taken }: { readonly spots: readonly Spot[]; readonly taken: readonly Box[] },
): Falls {
  const flows: Flow[] = [];
  const labels: Label[] = [];
  const boxes = [...taken];
  const falls = spansOf(input).map((span) => fallOf(input, span));
  for (const fall of falls.sort((a, b) => urgency(b) - urgency(a))) {
    const made = placed(frame, fall, { spots, taken: boxes });
    if (!made) continue;
    labels.push(made);
    boxes.push(made.box);
    const { box, ink } = made;
    if (fall.to !== null)
      flows.push({ x: box.x + ARROW / 2 - 2, y: box.y + box.height / 2 - 0.5, to: fall.to, ink });
  }
  return { flows, labels };
}

/** Longer than any line, mm: what fails is written before what is long. */
const FIRST = 1_000_000;

const urgency = ({ verdict, span }: Fall): number =>
  (verdict === 'fail' ? 2 * FIRST : verdict === 'note' ? FIRST : 0) + span.end - span.start;

/** A straight falls alike all along; its middle tells. */
function fallOf(input: ProfileInput, span: StraightSpan): Fall {
  const { places } = input.profile;
  const middle = (span.start + span.end) / 2;
  const off = places.map(({ at }) => Math.abs(at - middle));
  const i = off.indexOf(Math.min(...off));
  const fall = input.falls[i]!;
  const { down, to } = runs(input, places[i]!, fall);
  const size = degrees(down);
  return size === '0°'
    ? { span, text: 'level', to: null, verdict: fall.verdict }
    : { span, text: size, to, verdict: fall.verdict };
}

/** How steeply liquid runs, and to which end. Without a drain end: as the tube lies. */
function runs({ up }: ProfileInput, place: ProfilePlace, { slope, toward }: ProfileFall): Runs {
  if (slope !== null && toward !== null) {
    const other = toward === 'A' ? 'Z' : 'A';
    return { down: Math.abs(slope), to: slope > 0 ? toward : other };
  }
  const climb = dot(place.tangent, up);
  const down = Math.atan2(Math.abs(climb), norm(cross(place.tangent, up)));
  return { down, to: climb > 0 ? 'A' : 'Z' };
}

interface Runs {
  readonly down: number;
  readonly to: 'A' | 'Z';
}

interface Around {
  readonly spots: readonly Spot[];
  readonly taken: readonly Box[];
}

/** Over the line, or in the area under it, where nothing else stands. */
function placed(frame: Frame, { span, text, to, verdict }: Fall, { spots, taken }: Around): Label | null {
  const size = small(frame.size);
  const [x1, x2] = [xOf(frame, span.start), xOf(frame, span.end)];
  const sign = verdict === 'fail' ? '✕ ' : verdict === 'note' ? '! ' : '';
  const ink: Ink = verdict === 'fail' || verdict === 'note' ? verdict : 'ink';
  for (const over of [true, false])
    for (const part of ALONG) {
      const at = (y: number): Label =>
        label({
          key: `fall-${span.before}`,
          text: sign + text,
          x: x1 + (x2 - x1) * part,
          y,
          size,
          ink,
          halo: true,
          bold: ink !== 'ink',
          before: to === null ? 0 : ARROW,
        });
      const box = at(0).box;
      if (box.width > x2 - x1 + size * 2) return null;
      const [top, bottom] = curveSpan(spots, box.x, box.x + box.width);
      const made = at((over ? top - OFF - lineHeight(size) : bottom + OFF) - box.y);
      if (fits(frame, made.box) && isFree(made.box, taken, 3)) return made;
    }
  return null;
}

const fits = ({ rows, left, right, ground, size }: Frame, box: Box): boolean =>
  box.x >= left - 4 &&
  box.x + box.width <= right + 12 &&
  box.y >= rows.plot.top &&
  box.y + box.height <= ground + size.text * 0.4;
