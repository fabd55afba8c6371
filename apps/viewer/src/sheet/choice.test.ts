import { AIDS, PAGE_KINDS } from 'runback/sheet';
import { describe, expect, it } from 'vitest';
import { AT_FIRST, readChoice, switched } from './choice.ts';

describe('readChoice', () => {
  it('takes back what was kept', () => {
    const kept = {
      which: 'all',
      from: 'Z',
      units: 'in-16',
      paper: 'letter',
      pages: ['bench'],
      aids: ['tape', 'wheel'],
      zoom: 'actual',
    };
    expect(readChoice(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  });

  it.each([
    null,
    7,
    'all',
    [],
    { which: 'both', from: 'B', units: 'cm', paper: 'A5', pages: 'bench', aids: 3 },
  ])('is as at first for %j', (kept) => expect(readChoice(kept)).toEqual(AT_FIRST));

  it('knows no page or aid that is not there, and keeps their order', () => {
    const { pages, aids } = readChoice({ pages: ['values', 'gone', 'bench'], aids: ['wheel', null, 'tape'] });
    expect(pages).toEqual(['bench', 'values']);
    expect(aids).toEqual(['tape', 'wheel']);
  });
});

describe('switched', () => {
  it('puts one in at its place, and takes it out again', () => {
    expect(switched(AIDS, ['cards'], 'tape')).toEqual(['tape', 'cards']);
    expect(switched(AIDS, ['tape', 'cards'], 'tape')).toEqual(['cards']);
    expect(switched(PAGE_KINDS, ['bench'], 'bench')).toEqual([]);
  });
});
