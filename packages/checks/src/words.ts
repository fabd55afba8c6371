/** How numbers and directions are said in findings. */
import { type AttitudeSet, type MachineAxes, pitchAndRoll, type SlopeExtreme } from '@runback/geometry';
import { formatDegrees, formatLength, type JobUnit, type KeepOffReason } from '@runback/job';

/** A length as the job's reader says it: a tenth of a mm, or a fraction of an inch. */
export const say = (mm: number, units: JobUnit): string => formatLength(mm, units);

/** An angle in degrees to a tenth. */
export const sayAngle = (radians: number): string => `${formatDegrees(radians)}°`;

/** As many decimals as two lengths are ever told apart by. */
const MOST_DECIMALS = 6;

/** Two lengths that a rule tells apart, so written that the reader can too. */
export function sayBoth(found: number, limit: number, units: JobUnit): readonly [string, string] {
  let both = [say(found, units), say(limit, units)] as const;
  for (let decimals = 2; both[0] === both[1] && found !== limit && decimals <= MOST_DECIMALS; decimals++) {
    const format = { decimals, denominator: null };
    both = [formatLength(found, units, format), formatLength(limit, units, format)];
  }
  return both;
}

/** The same for angles in radians. */
export function sayBothAngles(found: number, limit: number): readonly [string, string] {
  let both = [sayAngle(found), sayAngle(limit)] as const;
  for (let decimals = 2; both[0] === both[1] && found !== limit && decimals <= MOST_DECIMALS; decimals++)
    both = [`${formatDegrees(found, decimals)}°`, `${formatDegrees(limit, decimals)}°`];
  return both;
}

const BECAUSE: Readonly<Record<KeepOffReason, string>> = {
  hot: ': hot',
  moving: ': moving',
  fixed: ': fixed',
  wiring: ': wiring',
};

/** Why a surrounding is kept clear of: ": hot", or nothing when the job gives no reason. */
export const because = (reason: KeepOffReason | null): string => (reason === null ? '' : BECAUSE[reason]);

type Leaning = Pick<SlopeExtreme, 'attitude' | 'up'>;

/** "nose down 5° and right side down 3°", or "level"; what is worst in a cone is told the same way. */
export function sayAttitude({ attitude, up }: Leaning, axes: MachineAxes): string {
  const { pitch, roll } = attitude ?? pitchAndRoll(axes, up);
  const said: string[] = [];
  if (sayAngle(pitch) !== '0°') said.push(`nose ${pitch > 0 ? 'down' : 'up'} ${sayAngle(Math.abs(pitch))}`);
  if (sayAngle(roll) !== '0°')
    said.push(`${roll > 0 ? 'right' : 'left'} side down ${sayAngle(Math.abs(roll))}`);
  return said.length === 0 ? 'level' : said.join(' and ');
}

/** Said of what is judged at rest only because nothing else is known: " (the job gives no attitudes)", else nothing. */
export const restOnly = ({ kind }: AttitudeSet): string =>
  kind === 'rest' ? ' (the job gives no attitudes)' : '';

/** "B1", "B1 and B2", "B1, B2 and B3". */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** A wall thickness: hundredths of a mm, thousandths of an inch. */
export const thickness = (mm: number, units: JobUnit): string =>
  formatLength(mm, units, { decimals: units === 'mm' ? 2 : 3, denominator: null });
