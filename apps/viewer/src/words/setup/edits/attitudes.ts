/** How the machine tips in use, as a choice and four sides. Degrees. */
import type { JobEdit } from 'runback';
import { writtenNumber } from '../../parts/read.ts';
import type { Written } from './written.ts';

export type WrittenAttitudes = NonNullable<Written['attitudes']>;
export type AttitudeKind = 'rest' | 'tilt' | 'box';
/** The four sides it tips to: positive pitch is nose down, positive roll right side down. */
export type Side = 'noseUp' | 'noseDown' | 'leftDown' | 'rightDown';

export const SIDES: readonly (readonly [Side, string])[] = [
  ['noseUp', 'Nose up'],
  ['noseDown', 'Nose down'],
  ['leftDown', 'Left side down'],
  ['rightDown', 'Right side down'],
];

const LEVEL: readonly [number, number] = [0, 0];
const PLACE = {
  noseUp: ['pitch', 0],
  noseDown: ['pitch', 1],
  leftDown: ['roll', 0],
  rightDown: ['roll', 1],
} as const;
/** What a choice begins with, when nothing is known yet. */
const FIRST_TILT = 5;

/** A box without any tip in it is how a line says that it stays at rest. */
export function kindOf(attitudes: WrittenAttitudes | undefined): AttitudeKind {
  if (attitudes?.tilt !== undefined) return 'tilt';
  return SIDES.every(([side]) => tipOf(attitudes, side) === 0) ? 'rest' : 'box';
}

/** How far it tips to a side; below 0 when it never comes level that way. */
export function tipOf(attitudes: WrittenAttitudes | undefined, side: Side): number {
  const [axis, place] = PLACE[side];
  const value = (attitudes?.[axis] ?? LEVEL)[place];
  return (place === 0 ? -value : value) + 0;
}

/** The edit that sets how far it tips to one side. `at` is the path of the attitudes. */
export function tipEdit(
  at: string,
  attitudes: WrittenAttitudes | undefined,
  tip: readonly [Side, number],
): JobEdit {
  const [axis, place] = PLACE[tip[0]];
  const [lowest, highest] = attitudes?.[axis] ?? LEVEL;
  const value = place === 0 ? [-tip[1] + 0, highest] : [lowest, tip[1]];
  return { path: `${at}.${axis}`, value };
}

/** Attitudes of another kind that begin where these were. */
export function ofKind(kind: AttitudeKind, now: WrittenAttitudes | undefined): WrittenAttitudes {
  if (kind === 'rest') return { pitch: [0, 0], roll: [0, 0] };
  if (now !== undefined && kindOf(now) === kind) return now;
  const widest = now?.tilt ?? Math.max(...SIDES.map(([side]) => tipOf(now, side)));
  const tilt = widest > 0 ? widest : FIRST_TILT;
  return kind === 'tilt' ? { tilt } : { pitch: [-tilt, tilt], roll: [-tilt, tilt] };
}

const degrees = (value: number): string => `${writtenNumber(value)}°`;

/** "nose 5° up and down, sides 3°", or each side where they differ. */
export function sayAttitudes(attitudes: WrittenAttitudes | undefined): string {
  const kind = kindOf(attitudes);
  if (kind === 'rest') return 'at rest only';
  if (kind === 'tilt') return `any way within ${degrees(attitudes?.tilt ?? 0)}`;
  const pairs = [
    ['nose', 'noseUp', 'noseDown', ' up and down'],
    ['sides', 'leftDown', 'rightDown', ''],
  ] as const;
  const said = pairs.flatMap(([name, one, other, both]) => {
    const tip = tipOf(attitudes, one);
    if (tip !== tipOf(attitudes, other)) return [one, other].flatMap((side) => saySide(attitudes, side));
    return tip === 0 ? [] : [`${name} ${degrees(tip)}${both}`];
  });
  return said.join(', ');
}

function saySide(attitudes: WrittenAttitudes | undefined, side: Side): readonly string[] {
  const tip = tipOf(attitudes, side);
  const name = SIDES.find(([one]) => one === side)?.[1].toLowerCase();
  return tip === 0 ? [] : [`${name} ${degrees(tip)}`];
}
