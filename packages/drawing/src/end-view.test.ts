import { turnWords } from '@runback/bending';
import { cross, dot, negate, rotate, type Vec3 } from '@runback/geometry';
import type { Bench } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { drawnTurn, endViewing, hours } from './end-view.ts';

const UP: Vec3 = [0, 0, 1];
const DEGREE = Math.PI / 180;

const benches: readonly Bench[] = (['side', 'behind-free', 'at-start'] as const).flatMap((stand) =>
  (['left', 'right'] as const).flatMap((startOn) =>
    (['near', 'far', 'above', 'below'] as const).map((former): Bench => {
      const plane = former === 'near' || former === 'far' ? 'flat' : 'upright';
      return { stand, startOn, plane, former, moves: 'tube' };
    }),
  ),
);
const turns = [40, -115, 162, -59, 90, -90, 1, 179, -179, 150, -151];

/** The operator at the side looks along +Y; START on the left means travel along +X. */
const travelOf = (bench: Bench): Vec3 => (bench.startOn === 'left' ? [1, 0, 0] : [-1, 0, 0]);
const FORMERS: Readonly<Record<Bench['former'], Vec3>> = {
  near: [0, -1, 0],
  far: [0, 1, 0],
  above: UP,
  below: [0, 0, -1],
};

/** The hour a direction square to the tube points to for somebody looking along `look`: degrees clockwise from up. */
const hour = (v: Vec3, look: Vec3): number => Math.atan2(dot(v, cross(look, UP)), dot(v, UP)) / DEGREE;

const turnOf = (degrees: number): number => ((degrees % 360) + 360) % 360;
const same = (a: number, b: number): number => Math.abs(turnOf(a - b + 180) - 180);

describe('the end-on view', () => {
  it('shows the former and the pencil line where a tube turned by −φ about travel has them', () => {
    for (const bench of benches)
      for (const turn of turns) {
        const viewing = endViewing(bench);
        const look = viewing.from === 'START' ? travelOf(bench) : negate(travelOf(bench));
        const before = FORMERS[bench.former];
        const after = rotate(before, travelOf(bench), -turn * DEGREE);
        const pencil = { before: 0, after: -turn * DEGREE };
        const [drawnBefore, drawnAfter] = hours(viewing, { pencil, by: 0 });
        const label = `${JSON.stringify(bench)} ${turn}`;
        expect(same(viewing.former, hour(before, look)), label).toBeLessThan(0.001);
        expect(same(drawnBefore, hour(before, look)), label).toBeLessThan(0.001);
        expect(same(drawnAfter, hour(after, look)), label).toBeLessThan(0.001);
      }
  });

  it('turns its arrow the way the words say, from the old pencil line to the new one', () => {
    for (const bench of [...benches, null])
      for (const turn of turns) {
        const viewing = endViewing(bench);
        const [before, after] = hours(viewing, { pencil: { before: 0, after: -turn * DEGREE }, by: 0 });
        const by = drawnTurn(turnWords(turn, bench), bench);
        expect(by).not.toBe('both');
        expect(same(before + Number(by), after), `${JSON.stringify(bench)} ${turn}`).toBeLessThan(0.001);
      }
  });

  it('carries the bender the other way round where the tube is held', () => {
    const bench: Bench = { ...benches[0]!, moves: 'bender' };
    for (const turn of turns) {
      const [before, after] = hours(endViewing(bench), {
        pencil: { before: 0, after: -turn * DEGREE },
        by: 0,
      });
      expect(same(after - before, turn)).toBeLessThan(0.001);
      expect(same(before + Number(drawnTurn(turnWords(turn, bench), bench)), after)).toBeLessThan(0.001);
    }
  });

  it('puts the operator on the near side, and gives a half turn no way to go', () => {
    const side = { ...benches[0]!, stand: 'side', former: 'near', plane: 'flat' } as const;
    expect(endViewing({ ...side, startOn: 'left' })).toMatchObject({ you: 90, former: 90 });
    expect(endViewing({ ...side, startOn: 'right' })).toMatchObject({ you: 270, former: 270 });
    expect(drawnTurn(turnWords(180, side), side)).toBe('both');
    expect(drawnTurn(turnWords(0, side), side)).toBe(0);
    expect(drawnTurn(turnWords(null, side), side)).toBe(0);
  });
});
