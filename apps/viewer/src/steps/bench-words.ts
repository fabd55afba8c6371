/** What the screens say besides the sheet: shorter, for there is a picture beside it. */
import type { BenchPlan, OrderStep, TurnWords } from 'runback';

/** What to do to come into the next plane; how far is said apart only where it is one angle. */
export function orderWords({ kind, head, amount }: TurnWords): string {
  if (kind === 'first') return `${head}; ${amount}`;
  if (kind === 'half') return `${head}: ${amount}`;
  return kind === 'near-half' ? `${head}, ${amount}` : head;
}

/** The same at the arrow of a picture, short. */
export const arrowWords = ({ kind, head, amount }: TurnWords): string =>
  kind === 'near-half' ? head.slice(head.indexOf(': ') + 2) : amount;

/** How one stands, as short as it can be said. */
export function standShort({ bench }: Pick<BenchPlan, 'bench'>): string {
  if (bench === null) return 'as seen from START';
  if (bench.moves === 'bender') return 'you carry the BENDER';
  if (bench.stand === 'side') return `on your ${bench.startOn.toUpperCase()}`;
  return bench.stand === 'at-start' ? 'you stand at START' : 'you stand at FREE';
}

/** The steps of the order list before the first bend, without the marks, and those behind the last. */
export function splitOrder(steps: readonly OrderStep[]): {
  readonly before: readonly OrderStep[];
  readonly mark: OrderStep | null;
  readonly after: readonly OrderStep[];
} {
  const hook = steps.findIndex(({ kind }) => kind === 'hook');
  const last = steps.findLastIndex(({ kind }) => kind === 'bend' || kind === 'hook' || kind === 'mark');
  return {
    before: steps.slice(0, hook + 1),
    mark: steps.find(({ kind }) => kind === 'mark') ?? null,
    after: steps.slice(last + 1).filter(({ kind }) => kind !== 'check'),
  };
}
