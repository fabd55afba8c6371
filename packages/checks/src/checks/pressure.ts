import { CAUTION, type CodePressure } from '@runback/bending';
import { finding, unjudged } from '../finding.ts';
import type { Finding } from '../types.ts';
import type { Work } from '../work.ts';
import { leastPressure } from '../worked/estimates-pressure.ts';
import { PRESSURE_BASIS } from '../worked/facts-pressure.ts';
import { sayBothPressures, sayPressure } from '../worked/facts-say.ts';

const CHECK = 'pressure';

const codeName = ({ bendInsideMPa }: CodePressure): string =>
  bendInsideMPa === null ? 'the code formula' : 'the code formula with its tightest bend';

/** The lowest of the formulas against the working pressure, where the job gives one. No approval either way. */
export function pressure({ line, estimates }: Work): Finding[] {
  const wanted = line.duty.pressure;
  if (wanted === null) return [];
  const found = estimates().pressure;
  const least = found && leastPressure(found);
  const shared = { path: wanted.path, limit: wanted.value, unit: 'MPa' as const, basis: PRESSURE_BASIS };
  if (found === null || least === null) {
    const working = sayPressure(wanted.value, line.units);
    const message = `It works at ${working}; neither strength nor allowable stress of ${line.tube.material.name} is known, so no estimate.`;
    return [unjudged(CHECK, message, shared)];
  }
  const [holds, working] = sayBothPressures(least, wanted.value, line.units);
  const by = found.code?.leastMPa === least ? codeName(found.code) : "Barlow's formula";
  const ok = least >= wanted.value;
  return [
    finding({
      ...shared,
      check: CHECK,
      verdict: ok ? 'pass' : 'fail',
      message: ok
        ? `By ${by} the estimate is ${holds}; it works at ${working}: ${CAUTION}.`
        : `By ${by} the estimate is only ${holds}; it works at ${working}: ${CAUTION}.`,
      found: least,
    }),
  ];
}
