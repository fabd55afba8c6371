/** Sentences of the scene: the tilt, and why a line has no shape. */
import { type AttitudeSet, dot, formatDegrees, type MachineAxes, type Vec3, type WorkedLine } from 'runback';
import { shownPockets } from '../pockets/index.ts';
import type { Tilt } from '../store/index.ts';

const DEGREE = Math.PI / 180;
const ELSE = 15 * DEGREE;

/** How far the sliders go, radians. */
export interface TiltRange {
  readonly pitch: readonly [number, number];
  readonly roll: readonly [number, number];
}

/** As far as the line's own attitudes; where it has none, ±15°. The present tilt is always within. */
export function tiltRange(attitudes: AttitudeSet, { pitch, roll }: Tilt): TiltRange {
  const around = (t: number): readonly [number, number] => [-t, t];
  const own: TiltRange =
    attitudes.kind === 'cone'
      ? { pitch: around(attitudes.tilt), roll: around(attitudes.tilt) }
      : attitudes.kind === 'box'
        ? attitudes
        : { pitch: [0, 0], roll: [0, 0] };
  const open = ([low, high]: readonly [number, number], now: number): readonly [number, number] =>
    low === high ? [Math.min(-ELSE, now), Math.max(ELSE, now)] : [Math.min(low, now), Math.max(high, now)];
  return { pitch: open(own.pitch, pitch), roll: open(own.roll, roll) };
}

const inWords = (angle: number, [positive, negative]: readonly [string, string]): string => {
  const size = formatDegrees(Math.abs(angle));
  return size === '0' ? 'level' : `${angle > 0 ? positive : negative} ${size}°`;
};

export const pitchWords = (pitch: number): string => inWords(pitch, ['nose down', 'nose up']);
export const rollWords = (roll: number): string => inWords(roll, ['right side down', 'left side down']);

export function tiltWords({ pitch, roll }: Tilt): string {
  const parts = [pitchWords(pitch), rollWords(roll)].filter((words) => words !== 'level');
  return parts.length === 0 ? 'level' : parts.join(', ');
}

/** The tilt in which the line falls least; `null` when it is not asked to fall. */
export const worstTilt = ({ line, slope }: WorkedLine): Tilt | null =>
  slope && tiltOf(slope.worst, line.axes);

/** The tilt in which most liquid stays; `null` when none worth a sign does. */
export function fullestTilt({ line, pockets }: WorkedLine): Tilt | null {
  const worst = pockets?.worst ?? null;
  return line.drain && worst && shownPockets(worst).length > 0 ? tiltOf(worst, line.axes) : null;
}

/** A cone names no pitch and roll: then those that bring up there. */
function tiltOf(
  { attitude, up }: { readonly attitude: Tilt | null; readonly up: Vec3 },
  { forward, left, up: above }: MachineAxes,
): Tilt {
  if (attitude !== null) return attitude;
  const [f, l, u] = [dot(up, forward), dot(up, left), dot(up, above)];
  return { pitch: Math.atan2(-f, Math.hypot(l, u)), roll: Math.atan2(l, u) };
}

/** Why the line cannot exist, from its findings: first what does not fit, then how to cure it. */
export function misfitWords({ findings }: WorkedLine): readonly string[] {
  const misfits = findings.filter(({ check, verdict }) => check === 'corner-fit' && verdict === 'fail');
  return misfits.map(({ message, cure }) => (cure ? `${message} ${cure.text}` : message));
}
