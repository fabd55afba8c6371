/** The marking tape: laid along the straight tube, it shows where every mark goes. */
import type { LengthStyle } from '@runback/job';
import { MM_PER_INCH } from '@runback/job';
import type { AidBody, AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { GLUE, segmentsOf } from './aid-ribbon.ts';
import { STRIP_HEIGHT } from './aid-tape-labels.ts';
import { tapePlan } from './aid-tape-plan.ts';
import { drawSegment, TAB } from './aid-tape-strip.ts';
import { joined, type Part } from './set.ts';
import { length } from './words.ts';

/** Between strips, mm. */
const APART = 4;
/** Beyond this many joints glue adds up to more than a steel tape is off. Judgement, no source. */
const MOST_SEGMENTS = 40;

export function tapePages(context: AidContext): Made {
  const { plan } = context;
  const tape = tapePlan(context);
  const frame = aidFrame(context.paper, 'landscape');
  const segments = segmentsOf(tape.length, frame.body.width - GLUE - TAB, plan.unit);
  if (segments.length > MOST_SEGMENTS)
    return {
      bodies: [],
      why: `marking tape: ${segments.length} strips would not stay true; mark with a steel tape`,
    };
  const drawn = segments.map((segment) => drawSegment(tape, segment, { context, width: frame.body.width }));
  const words = howWords(context, segments.length, tape.length);
  const lost = drawn.flatMap((one) => one.left);
  if (lost.length > 0) words.push(`Too close to be named on the tape: ${lost.join(', ')}; go by the sheet.`);
  const head = aidHow(frame.body, words);
  const perPage = Math.max(1, Math.floor((head.rest.height + APART) / (STRIP_HEIGHT + APART)));
  const bodies: AidBody[] = [];
  for (let i = 0; i < drawn.length; i += perPage) {
    const strips = drawn
      .slice(i, i + perPage)
      .map((one, row): Part => one.at(head.rest.x, head.rest.y + row * (STRIP_HEIGHT + APART)));
    bodies.push({ title: 'MARKING TAPE', frame, part: joined([head.part, ...strips]) });
  }
  return { bodies };
}

function howWords({ plan }: AidContext, strips: number, end: number): string[] {
  const said = length(end, plan.unit);
  const last = plan.rows.at(-1);
  const measure = last
    ? `the last mark is ${length(last.mark, plan.unit)} and the tube ends at ${said}`
    : `the tube ends at ${said}`;
  return [
    `Cut along the top edge. Fold the tab at ZERO over the ${plan.hook.words} and lay the top edge along the pencil line, ZERO to FREE.`,
    ...(strips > 1
      ? [
          'Joints: cut the left edge of the next strip on its line, lay it on the line with the same letter, top edges in one line.',
        ]
      : []),
    `Before you mark, measure from ZERO with a steel tape: ${measure}. Not so? Mark by the sheet.`,
    'Carry each MARK round the tube with a pencil; the arrow points to FREE. Grey: tube that becomes the bend. Dashed: sawn off or put there later. Clips count from finished END A; the tape has them where they come out.',
    accuracy(plan.unit, { end, strips }),
  ];
}

/** What half a millimetre (1/64 in) on the bar makes over the whole tape; glue and pencil are judgement. */
function accuracy(
  unit: LengthStyle,
  { end, strips }: { readonly end: number; readonly strips: number },
): string {
  const [off, said, bar] =
    unit === 'mm' ? [0.5, '0.5 mm', 100] : [MM_PER_INCH / 64, '1/64 in', 4 * MM_PER_INCH];
  const far = (off * end) / bar;
  const farSaid = unit === 'mm' ? `${far.toFixed(1)} mm` : `${(far / MM_PER_INCH).toFixed(2)} in`;
  const joints = strips > 1 ? `, each joint about as much again` : '';
  return `Accuracy: a bar ${said} off is ${farSaid} off at the far end. With true bars a mark is good to about ${said}${joints} (common practice, no source).`;
}
