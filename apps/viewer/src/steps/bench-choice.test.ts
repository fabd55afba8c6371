import { placeWords, toolWords } from 'runback/sheet';
import { describe, expect, it } from 'vitest';
import {
  type Bench,
  canBe,
  choiceOf,
  formerSide,
  STANDINGS,
  sameBench,
  toolFor,
  toolsFor,
} from './bench-choice.ts';
import { standShort } from './bench-words.ts';

const FLAT: Bench = { stand: 'side', startOn: 'left', plane: 'flat', former: 'far', moves: 'tube' };

describe('how one can stand', () => {
  it('offers four places and five tools at each, none twice, all possible', () => {
    const all = STANDINGS.flatMap(toolsFor);
    expect(all.length).toBe(20);
    expect(all.every(canBe)).toBe(true);
    for (const standing of STANDINGS) {
      const words = toolsFor(standing).map(toolWords);
      expect(new Set(words).size).toBe(5);
    }
    expect(new Set(STANDINGS.map(placeWords)).size).toBe(4);
  });

  it('knows a bench that cannot be', () => {
    expect(canBe({ ...FLAT, former: 'above' })).toBe(false);
  });

  it('names the side of the former as the operator sees it', () => {
    expect(formerSide(FLAT)).toBe('away');
    expect(formerSide({ ...FLAT, former: 'near' })).toBe('toward');
    expect(formerSide({ ...FLAT, stand: 'at-start' })).toBe('left');
    expect(formerSide({ ...FLAT, stand: 'behind-free' })).toBe('right');
    expect(formerSide({ ...FLAT, plane: 'upright', former: 'below' })).toBe('below');
  });

  it('takes two names of one bench for one, and two hands for two', () => {
    const atStart: Bench = { ...FLAT, stand: 'at-start' };
    expect(sameBench(atStart, { ...atStart, startOn: 'right', former: 'near' })).toBe(true);
    expect(sameBench(FLAT, { ...FLAT, startOn: 'right' })).toBe(false);
    expect(sameBench(FLAT, null)).toBe(false);
    expect(sameBench(null, null)).toBe(true);
    const carried: Bench = { ...FLAT, moves: 'bender' };
    expect(sameBench(carried, { ...carried, stand: 'at-start' })).toBe(true);
    expect(sameBench(carried, FLAT)).toBe(false);
  });

  it('asks for a flat tool again when the operator walks round it', () => {
    expect(toolFor({ stand: 'side', startOn: 'right' }, FLAT)).toBeNull();
    expect(toolFor({ stand: 'side', startOn: 'left' }, FLAT)).toEqual(FLAT);
    const upright: Bench = { ...FLAT, plane: 'upright', former: 'above' };
    expect(toolFor({ stand: 'side', startOn: 'right' }, upright)).toEqual({ ...upright, startOn: 'right' });
    expect(toolFor({ stand: 'side', startOn: 'right' }, null)).toBeNull();
  });

  it('keeps the check of the turn that the job asks for', () => {
    expect(choiceOf(FLAT, { ...FLAT, turnCheck: 'gauge' }).turnCheck).toBe('gauge');
    expect(choiceOf(FLAT, null)).toEqual(FLAT);
  });

  it('says in a few words how one stands', () => {
    expect(standShort({ bench: FLAT })).toBe('on your LEFT');
    expect(standShort({ bench: { ...FLAT, moves: 'bender' } })).toBe('you carry the BENDER');
    expect(standShort({ bench: null })).toBe('as seen from START');
  });
});
