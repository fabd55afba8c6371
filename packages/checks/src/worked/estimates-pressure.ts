import {
  type CodePressure,
  codePressure,
  type PressureEstimates,
  type ProofService,
  type ProofTest,
  pressureEstimates,
  proofRules,
  proofTest,
} from '@runback/bending';
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { LinePressure } from '../fluid-types.ts';

/** What the tube may hold by formula, and what it is proved with; `null` when neither metal nor working pressure is known. */
export function pressureOf(line: Line, centreline: Centreline): LinePressure | null {
  const working = line.duty.pressure?.value ?? null;
  const [straight, code] = [straightOf(line), codeOf(line, centreline)];
  if (working === null && straight === null && code === null) return null;
  return { working, straight, code, proof: working === null ? null : proofOf(line, working) };
}

function straightOf({ tube, duty }: Line): PressureEstimates | null {
  const { strength } = tube.material;
  return (
    strength &&
    pressureEstimates({
      od: tube.od,
      wall: tube.wall,
      stressMPa: strength.value,
      safetyFactor: duty.safetyFactor.value,
      wallToleranceFraction: duty.wallTolerance.value,
    })
  );
}

/** By the tightest bend; `null` where it is so tight that the formulas have no inside of it. */
function codeOf({ tube, duty }: Line, { bends }: Centreline): CodePressure | null {
  const { allowable } = tube.material;
  const radius = Math.min(...bends.map((bend) => bend.radius));
  if (allowable === null || radius <= tube.od / 2) return null;
  return codePressure({
    od: tube.od,
    wall: tube.wall,
    allowableMPa: allowable.value,
    wallToleranceFraction: duty.wallTolerance.value,
    ...(bends.length > 0 ? { radius } : {}),
  });
}

/** The rule of the line's service; `null` for a service that no rule is known for. */
const proofOf = ({ service }: Line, working: number): ProofTest | null =>
  hasRule(service.id) ? proofTest(service.id, working) : null;

const hasRule = (id: string): id is ProofService => Object.hasOwn(proofRules, id);

/** The lowest of the formulas that there is data for, MPa; `null` without. */
export function leastPressure({ straight, code }: LinePressure): number | null {
  const all = [straight?.leastMPa, code?.leastMPa].filter((mpa) => mpa !== undefined);
  return all.length === 0 ? null : Math.min(...all);
}
