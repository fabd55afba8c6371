/** Whether a line falls everywhere, in one sentence that a fabricator can sign for. */
import type { AttitudeSet, Centreline, DrainEnd, SlopeExtreme } from '@runback/geometry';
import type { Figure, Line } from '@runback/job';
import { onlyLevel } from './only-level.ts';
import { where } from './place.ts';
import { enoughAtRest, enoughTilted } from './slope-limits.ts';
import type { LineSlope, Place, SlopeProof } from './types.ts';
import { list, restOnly, say, sayAngle, sayAttitude } from './words.ts';
import { sayAngleAtLeast } from './worked/facts-say.ts';

type Fallen = Omit<LineSlope, 'proof'>;

/** The tangent falls, at rest and in every attitude: more than level everywhere. Else the attitude and the place where it does not. */
export function slopeProof(line: Line, centreline: Centreline, slope: Fallen): SlopeProof {
  const holds = slope.rest.slope > 0 && slope.worst.slope > 0;
  return { holds, text: holds ? proven(line, slope) : disproved(line, centreline, slope) };
}

const WAY: Readonly<Record<DrainEnd, string>> = {
  A: 'Falls toward end A over its whole length, bends included',
  Z: 'Falls toward end Z over its whole length, bends included',
  both: 'Falls from one crest toward both its ends over its whole length, bends included but the one that turns over the crest',
};

function proven({ attitudes, drain }: Line, { toward, rest, worst }: Fallen): string {
  const level = `${sayAngleAtLeast(rest.slope)}${short(enoughAtRest(rest.slope, drain!), drain!.minSlope)}`;
  const ranges = attitudeRange(attitudes);
  if (ranges === null)
    return `${WAY[toward]}: at least ${level} at rest${restOnly(attitudes) || ', its only attitude'}. Proven over the whole line as drawn, not sampled; what was bent is proven with a level.`;
  return (
    `${WAY[toward]}: at least ${level} with the machine level, at least ${sayAngleAtLeast(worst.slope)}${short(enoughTilted(worst.slope, drain!), drain!.minSlopeTilted)} in every attitude (${ranges}). ` +
    'Proven over the whole line as drawn and all attitudes at once, not sampled; what was bent is proven with a level.'
  );
}

/** What falls everywhere may still fall less than was asked. */
const short = (enough: boolean, wanted: Figure): string =>
  enough ? '' : ` (${sayAngleAtLeast(wanted.value)} asked: NOT met)`;

/** "nose up 5° to nose down 5°, left side down 3° to right side down 3°"; `null` when there is only the one at rest. */
function attitudeRange(attitudes: AttitudeSet): string | null {
  if (attitudes.kind === 'rest') return null;
  if (attitudes.kind === 'cone') return `tilted up to ${sayAngle(attitudes.tilt)} any way`;
  const ranges = [
    range(attitudes.pitch, ['nose up', 'nose down']),
    range(attitudes.roll, ['left side down', 'right side down']),
  ].filter((said) => said !== null);
  return ranges.length === 0 ? null : ranges.join(', ');
}

function range(
  [low, high]: readonly [number, number],
  [below, above]: readonly [string, string],
): string | null {
  if (low === 0 && high === 0) return null;
  const said = (angle: number): string =>
    angle === 0 ? 'level' : `${angle < 0 ? below : above} ${sayAngle(Math.abs(angle))}`;
  return low === high ? said(low) : `${said(low)} to ${said(high)}`;
}

function disproved(line: Line, centreline: Centreline, slope: Fallen): string {
  const place = ({ at }: Place): string => `${where(centreline, at)}, ${say(at, line.units)} from end A`;
  const no = 'Does NOT fall everywhere:';
  const { toward, rest, worst, lows } = slope;
  if (toward === 'both' && lows.length > 0) return `${no} at rest it sags ${list(lows.map(place))}.`;
  if (rest.slope <= 0) return `${no} at rest, ${place(rest)}, ${rises(rest, toward)}.`;
  const attitude = onlyLevel(line.attitudes) ? 'at rest' : sayAttitude(worst, line.axes);
  return `${no} ${attitude}, ${place(worst)}, ${rises(worst, toward)}.`;
}

function rises({ slope }: SlopeExtreme, toward: DrainEnd): string {
  const said = sayAngle(Math.abs(slope));
  const way = toward === 'both' ? 'toward one of its two ends' : `toward end ${toward}`;
  return said === '0°' ? `it is level, no fall ${way}` : `it rises ${said} ${way}`;
}
