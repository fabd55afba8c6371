/** The plan of a line for the bench, worked once for each line, end and way of reading. */
import {
  type BenchPlan,
  bendPlan,
  type EndName,
  type LengthStyle,
  roundPlan,
  type WorkedLine,
} from 'runback';

const worked = new WeakMap<WorkedLine, Map<string, BenchPlan>>();

/** `null` when the line cannot exist. */
export function benchOf(line: WorkedLine, from: EndName, unit: LengthStyle): BenchPlan | null {
  const { plan, centreline } = line;
  if (plan === null || centreline === null) return null;
  const plans = worked.get(line) ?? new Map<string, BenchPlan>();
  worked.set(line, plans);
  const key = `${from} ${unit}`;
  const exact = from === 'A' ? plan : bendPlan(line.line, centreline, from);
  const bench = plans.get(key) ?? roundPlan(line.line, exact, { unit });
  plans.set(key, bench);
  return bench;
}
