/** What colours a line has along its length, with bands where a place fails or notes. */
import { type LineProfile, POINT_MM, type ProfileFall } from 'runback';
import type { ColourMode } from '../../store/types.ts';
import type { Rgb } from './mesh.ts';
import { banded, mixed, type Stop, type Stops, type Stretch, thinned } from './stops.ts';

export interface Palette {
  readonly tube: Rgb;
  readonly pass: Rgb;
  readonly note: Rgb;
  readonly fail: Rgb;
  /** Of the bands. */
  readonly ink: Rgb;
  /** What plenty of room fades to. */
  readonly pale: Rgb;
}

type Tone = 'plain' | 'pass' | 'note' | 'fail';

interface Reading {
  readonly at: number;
  readonly tone: Tone;
  readonly colour: Rgb;
}

export interface PaintAsk {
  readonly colour: ColourMode;
  readonly profile: LineProfile;
  readonly falls: readonly ProfileFall[] | null;
  readonly od: number;
  readonly palette: Palette;
}

/** Stops of a line in a colour mode. */
export function painted({ colour, profile, falls, od, palette }: PaintAsk): Stops {
  const readings = readingsOf({ colour, profile, falls, palette });
  if (readings.every(({ tone }) => tone === 'plain')) return plainStops(profile.length, palette);
  const size = bandSize(od, profile.length);
  return banded(thinned(edged(readings)), bandsOf(stretchesOf(readings), size), palette.ink);
}

export const plainStops = (length: number, { tube }: Pick<Palette, 'tube'>): Stops => [
  { at: 0, colour: tube },
  { at: length, colour: tube },
];

function readingsOf(ask: Omit<PaintAsk, 'od'>): readonly Reading[] {
  const { profile, falls, palette } = ask;
  if (ask.colour === 'slope')
    return profile.places.map(({ at }, i) => {
      const tone = falls?.[i]?.verdict ?? 'plain';
      return { at, tone, colour: tone === 'plain' ? palette.tube : palette[tone] };
    });
  if (ask.colour === 'plain')
    return profile.places.map(({ at }) => ({ at, tone: 'plain', colour: palette.tube }));
  return profile.places.map(({ at, nearest }) => {
    if (nearest === null) return { at, tone: 'plain', colour: palette.tube };
    const left = nearest.distance - nearest.keepOff;
    if (left < -POINT_MM) return { at, tone: 'fail', colour: palette.fail };
    return { at, tone: 'pass', colour: mixed(palette.pass, palette.pale, roomShown(left, nearest.keepOff)) };
  });
}

/** Room left over that is shown as plenty, mm: as much again as is kept off, but something where nothing is. */
const PLENTY_MM = 20;
const roomShown = (left: number, keepOff: number): number => Math.min(1, left / Math.max(keepOff, PLENTY_MM));

const RANK: Readonly<Record<Tone, number>> = { plain: 0, pass: 1, note: 2, fail: 3 };

/** Between two places of unlike verdict the worse one holds; between two that pass, colours run into each other. */
function edged(readings: readonly Reading[]): Stops {
  return readings.flatMap((here, i): readonly Stop[] => {
    const next = readings[i + 1];
    const stop = { at: here.at, colour: here.colour };
    if (!next || next.tone === here.tone) return [stop];
    const worse = RANK[next.tone] > RANK[here.tone];
    return worse
      ? [stop, { at: here.at, colour: next.colour }]
      : [stop, { at: next.at, colour: here.colour }];
  });
}

interface ToneStretch extends Stretch {
  readonly tone: Tone;
}

function stretchesOf(readings: readonly Reading[]): readonly ToneStretch[] {
  const stretches: ToneStretch[] = [];
  readings.slice(1).forEach((next, i) => {
    const here = readings[i]!;
    const tone = RANK[next.tone] > RANK[here.tone] ? next.tone : here.tone;
    const last = stretches[stretches.length - 1];
    if (last?.tone === tone) stretches[stretches.length - 1] = { ...last, to: next.at };
    else stretches.push({ tone, from: here.at, to: next.at });
  });
  return stretches;
}

/** Width of a band, mm: part of the tube's width, but never lost on a long line. */
export const bandSize = (od: number, length: number): number => Math.max(0.3 * od, length / 260);

const DOUBLE_EVERY = 7;
const SINGLE_EVERY = 16;

/** Close double bands where it fails, single ones far apart where it notes; a short stretch has at least one. */
function bandsOf(stretches: readonly ToneStretch[], size: number): readonly Stretch[] {
  return stretches
    .flatMap(({ tone, from, to }) => {
      if (tone !== 'fail' && tone !== 'note') return [];
      const every = size * (tone === 'fail' ? DOUBLE_EVERY : SINGLE_EVERY);
      const count = Math.max(1, Math.round((to - from) / every));
      return Array.from({ length: count }, (_, i) => from + ((i + 0.5) * (to - from)) / count).flatMap(
        (middle) =>
          tone === 'fail'
            ? [
                within(middle - size * 1.5, size, { from, to }),
                within(middle + size * 0.5, size, { from, to }),
              ]
            : [within(middle - size / 2, size, { from, to })],
      );
    })
    .filter((band) => band.to > band.from);
}

const within = (start: number, size: number, { from, to }: Stretch): Stretch => ({
  from: Math.max(from, start),
  to: Math.min(to, start + size),
});
