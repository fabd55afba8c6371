import { fromRows, type LineProfile, type ProfileFall, type Verdict } from 'runback';
import { describe, expect, it } from 'vitest';
import type { Rgb } from './mesh.ts';
import { bandSize, type Palette, painted } from './paint.ts';
import { banded, coloursAt, thinned } from './stops.ts';
import { sweptTube } from './sweep.ts';

const PALETTE: Palette = {
  tube: [0.5, 0.3, 0.1],
  pass: [0, 0, 1],
  note: [1, 1, 0],
  fail: [1, 0, 0],
  ink: [0, 0, 0],
  pale: [0.5, 0.5, 1],
};

const LENGTH = 1000;
const LINE = fromRows([], LENGTH);

/** A line of places every 100 mm. */
const profileOf = (left: (at: number) => number | null): LineProfile => ({
  length: LENGTH,
  bends: [],
  places: Array.from({ length: 11 }, (_, i) => {
    const at = i * 100;
    const room = left(at);
    const nearest =
      room === null ? null : ({ kind: 'surrounding', to: 'x', distance: 40 + room, keepOff: 40 } as const);
    return { at, point: [at, 0, 0], tangent: [1, 0, 0], nearest };
  }),
});

const fallsOf = (verdict: (at: number) => Verdict | null): ProfileFall[] =>
  Array.from({ length: 11 }, (_, i) => ({ height: 0, slope: 0.1, toward: 'A', verdict: verdict(i * 100) }));

const NOTHING = profileOf(() => null);
const paint = (verdict: (at: number) => Verdict | null) =>
  painted({ colour: 'slope', profile: NOTHING, falls: fallsOf(verdict), od: 12, palette: PALETTE });

const bandsIn = (stops: ReturnType<typeof paint>): number =>
  stops.filter((stop, i) => stop.colour === PALETTE.ink && stops[i + 1]?.colour === PALETTE.ink).length;

describe('colours of slope', () => {
  it('change hard where the verdict does, the worse one holding between two places', () => {
    const stops = paint((at) => (at >= 400 && at <= 600 ? 'fail' : 'pass'));
    expect(coloursAt(stops, 300)).toEqual({ before: PALETTE.pass, after: PALETTE.fail });
    expect(coloursAt(stops, 700)).toEqual({ before: PALETTE.fail, after: PALETTE.pass });
    expect(coloursAt(stops, 0).after).toEqual(PALETTE.pass);
    expect(coloursAt(stops, 1000).before).toEqual(PALETTE.pass);
  });

  it('come with bands: double ones where it fails, single and farther apart where it notes, none where it passes', () => {
    const [fail, note, pass] = (['fail', 'note', 'pass'] as const).map((verdict) =>
      bandsIn(paint(() => verdict)),
    );
    expect(pass).toBe(0);
    expect(note).toBeGreaterThan(3);
    expect(fail).toBeGreaterThan(2 * note!);
    expect(fail! % 2).toBe(0);
  });

  it('mark even a short stretch, and no band leaves its stretch', () => {
    const stops = paint((at) => (at === 500 ? 'note' : 'pass'));
    const inked = stops.filter(({ colour }) => colour === PALETTE.ink).map(({ at }) => at);
    expect(inked.length).toBeGreaterThanOrEqual(2);
    expect(Math.min(...inked)).toBeGreaterThanOrEqual(400);
    expect(Math.max(...inked)).toBeLessThanOrEqual(600);
  });

  it('without a verdict are those of the tube, without a mark', () => {
    const stops = paint(() => null);
    expect(stops.map(({ colour }) => colour)).toEqual([PALETTE.tube, PALETTE.tube]);
  });

  it('reach the mesh at the ring where they change', () => {
    const stops = paint((at) => (at < 500 ? 'pass' : 'fail'));
    const mesh = sweptTube(LINE.pieces, { outer: 6, chord: 0.05, ends: { kind: 'flat' }, stops });
    const seen = new Map<number, Set<string>>();
    mesh.radii.forEach((radius, i) => {
      if (radius === 0) return;
      const x = Math.round((mesh.positions[3 * i]! + mesh.origin[0]) * 100) / 100;
      const colour = Array.from(mesh.colours.slice(3 * i, 3 * i + 3)).join();
      seen.set(x, (seen.get(x) ?? new Set()).add(colour));
    });
    expect(seen.get(0)).toEqual(new Set(['0,0,1']));
    expect(seen.get(400)).toEqual(new Set(['0,0,1', '1,0,0']));
    expect([...seen.keys()].filter((x) => x > 0 && x < 400)).toEqual([]);
  });
});

describe('colours of clearance', () => {
  const paintRoom = (left: (at: number) => number | null) =>
    painted({ colour: 'clearance', profile: profileOf(left), falls: null, od: 12, palette: PALETTE });

  it('fade with the room that is left, and fail below none', () => {
    const stops = paintRoom((at) => (at < 500 ? -1 : at - 500));
    expect(coloursAt(stops, 0).after).toEqual(PALETTE.fail);
    expect(coloursAt(stops, 500).after).toEqual(PALETTE.pass);
    expect(coloursAt(stops, 1000).before).toEqual(PALETTE.pale);
  });

  it('of exactly what is wanted pass', () => {
    expect(
      coloursAt(
        paintRoom(() => 0),
        200,
      ).after,
    ).toEqual(PALETTE.pass);
  });

  it('of nothing near are those of the tube', () => {
    expect(
      coloursAt(
        paintRoom(() => null),
        200,
      ).after,
    ).toEqual(PALETTE.tube);
  });
});

describe('stops', () => {
  const grey: Rgb = [0.5, 0.5, 0.5];
  it('run into each other between two places', () => {
    const stops = [
      { at: 0, colour: [0, 0, 0] as Rgb },
      { at: 10, colour: [1, 1, 1] as Rgb },
    ];
    expect(coloursAt(stops, 5)).toEqual({ before: grey, after: grey });
    expect(coloursAt(stops, 20).before).toEqual([1, 1, 1]);
  });
  it('in a run of one colour are left out', () => {
    expect(thinned([0, 1, 2, 3].map((at) => ({ at, colour: grey }))).map(({ at }) => at)).toEqual([0, 3]);
  });
  it('under a band come back behind it', () => {
    const plain = [0, 100].map((at) => ({ at, colour: grey }));
    const stops = banded(plain, [{ from: 40, to: 50 }], [0, 0, 0]);
    expect(coloursAt(stops, 45).before).toEqual([0, 0, 0]);
    expect(coloursAt(stops, 39).before).toEqual(grey);
    expect(coloursAt(stops, 51).before).toEqual(grey);
  });
  it('bands of a thin tube on a long line are not lost', () => {
    expect(bandSize(4.76, 1500)).toBeGreaterThan(5);
    expect(bandSize(12, 300)).toBeCloseTo(3.6);
  });
});
