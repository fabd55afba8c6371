/**
 * What stands where on the marking tape: distances along the straight tube from what the tape hooks on, mm. The tube
 * is not bent yet, so each bend before a place takes off what the tube grows in it.
 */
import type { BenchRow, EndName, OrderStep, Park } from '@runback/bending';
import type { AidContext } from './aid-context.ts';
import { length } from './words.ts';

export interface TapeMark {
  readonly name: string;
  readonly kind: 'mark' | 'clip' | 'trim' | 'end';
  readonly at: number;
  /** Longest first: the shorter ones serve where there is less room. */
  readonly labels: readonly string[];
}

export interface TapeSpan {
  readonly name: string;
  readonly kind: 'bend' | 'park';
  readonly from: number;
  readonly to: number;
  readonly labels: readonly string[];
}

export interface Tape {
  /** Where the tube ends as it lies there, ready to be marked. */
  readonly length: number;
  readonly marks: readonly TapeMark[];
  readonly spans: readonly TapeSpan[];
}

export function tapePlan(context: AidContext): Tape {
  const { plan } = context;
  const end = tubeEnd(context);
  const endWords = plan.order.steps.some((step) => isBeforeHook(context, step) && step.end === plan.free)
    ? `FINISHED END ${plan.free}: the tube ends here`
    : `SAWN END ${plan.free}: the tube ends here`;
  const marks: TapeMark[] = [
    ...plan.rows.map((row): TapeMark => {
      const [bend, at] = [`B${row.bend}`, length(row.mark, plan.unit)];
      return {
        name: `tape-mark-${row.bend}`,
        kind: 'mark',
        at: row.mark,
        labels: [`${bend}  MARK ${at}`, `${bend} ${at}`, bend],
      };
    }),
    ...trims(context, end),
    {
      name: 'tape-end',
      kind: 'end',
      at: end,
      labels: [
        `${endWords}, ${length(end, plan.unit)}`,
        `END ${plan.free} ${length(end, plan.unit)}`,
        `END ${plan.free}`,
      ],
    },
    ...clips(context),
  ];
  return {
    length: end,
    marks,
    spans: [...plan.rows.map(bendSpan), ...plan.order.parks.map((park) => parkSpan(context, park))],
  };
}

/** From the tape's zero to the finished START end. */
const hookExtra = ({ plan, exact }: AidContext): number =>
  plan.hook.face === 'finished' ? 0 : exact.startExtra;

const isBeforeHook = ({ plan: { order } }: AidContext, step: OrderStep): boolean =>
  step.kind === 'form' && order.steps.indexOf(step) < order.steps.findIndex(({ kind }) => kind === 'hook');

/** FREE as the tube lies there: sawn, or finished when it is formed before bending as well. */
function tubeEnd(context: AidContext): number {
  const { plan, exact } = context;
  const start = exact.startExtra - hookExtra(context);
  const formed = plan.order.steps.some((step) => isBeforeHook(context, step) && step.end === plan.free);
  return plan.cutLength - start - (formed ? exact.freeExtra : 0);
}

const growth = (row: BenchRow): number => (row.exact.die?.stretch ?? 0) * row.angle;
const bendFrom = (row: BenchRow): number => row.mark + (row.exact.die?.markOffset ?? 0);
/** The tube that becomes the bend is as long as its centreline less what it grows. */
const bendTo = (row: BenchRow): number => bendFrom(row) + row.radius * row.angle - growth(row);

function bendSpan(row: BenchRow): TapeSpan {
  return { name: `tape-bend-${row.bend}`, kind: 'bend', from: bendFrom(row), to: bendTo(row), labels: [] };
}

/** A distance along the finished line from START, as a place on the straight tube. */
export function onTape(context: AidContext, along: number): number {
  let grown = 0;
  const zero = hookExtra(context);
  for (const row of context.plan.rows) {
    const start = bendFrom(row) - zero + grown;
    const share = Math.min(1, Math.max(0, (along - start) / (row.radius * row.angle)));
    grown += share * growth(row);
  }
  return along - grown + zero;
}

const fromStart = ({ plan, exact }: AidContext, end: EndName, distance: number): number =>
  end === plan.from ? distance : exact.developedLength - distance;

function clips(context: AidContext): TapeMark[] {
  const { worked, plan } = context;
  return (worked.line.clips ?? []).map((place, i) => {
    const said = length(place, plan.unit);
    const at = onTape(context, fromStart(context, 'A', place));
    return {
      name: `tape-clip-${i + 1}`,
      kind: 'clip',
      at,
      labels: [`clip, ${said} from END A`, `clip ${said} A`, 'clip'],
    };
  });
}

function parkSpan(context: AidContext, { end, part, park, length: long }: Park): TapeSpan {
  const faces = [park, park + long].map((at) => onTape(context, fromStart(context, end, at)));
  const name = `${part.toUpperCase()} ${end}`;
  return {
    name: `tape-${part}-${end}`,
    kind: 'park',
    from: Math.min(...faces),
    to: Math.max(...faces),
    labels: [`${name} waits here`, name],
  };
}

/** What is sawn off after bending, at either end. */
function trims(context: AidContext, end: number): TapeMark[] {
  const { plan } = context;
  const { steps, trim } = plan.order;
  const hook = steps.findIndex(({ kind }) => kind === 'hook');
  const last = plan.rows.at(-1);
  return steps.slice(hook).flatMap((step): TapeMark[] => {
    if (step.kind !== 'trim' || step.end === null || step.distance === null) return [];
    const free = trim !== null && last ? bendTo(last) + trim : end - step.distance;
    const at = step.end === plan.from ? step.distance : free;
    const words = `SAW END ${step.end} here AFTER bending`;
    return [
      {
        name: `tape-trim-${step.end}`,
        kind: 'trim',
        at,
        labels: [words, `SAW ${step.end} after bending`, `SAW ${step.end} last`],
      },
    ];
  });
}
