import { readFileSync } from 'node:fs';
import { type Fact, type FactGroup, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY } from '../../../../../tests/helpers/run.ts';
import { factGroups, figureSets } from './figures.ts';

const [line] = workUp(readFileSync(FIRST_TRY, 'utf8')).lines;
const fact = (group: FactGroup, label: string): Fact => ({
  group,
  label,
  text: '1',
  basis: 'b',
  caution: null,
});
const run = (id: string, lines: readonly string[]) => ({
  run: { id, name: `the ${id}`, lines, drain: null, stick: null, path: '' },
  verdict: 'pass' as const,
  pockets: null,
  passage: null,
  stick: null,
  findings: [],
  facts: [fact('stick', 'long')],
});

describe('figures', () => {
  it('stand in their groups, in the order they come in, none left out', () => {
    const facts = [fact('pockets', 'a'), fact('mass', 'b'), fact('pockets', 'c')];
    const groups = factGroups(facts);
    expect(groups.map(({ group, facts: of }) => [group, of.map(({ label }) => label)])).toEqual([
      ['pockets', ['a', 'c']],
      ['mass', ['b']],
    ]);
  });

  it('have what is to be said of all of a group said once', () => {
    const careful = { ...fact('pressure', 'a'), caution: 'estimate' };
    const cautionOf = (...facts: readonly Fact[]) => factGroups(facts).map(({ caution }) => caution);
    expect(cautionOf(careful, { ...careful, label: 'b' })).toEqual(['estimate']);
    expect(cautionOf(careful)).toEqual([null]);
    expect(cautionOf(careful, fact('pressure', 'b'))).toEqual([null]);
    expect(cautionOf(fact('pressure', 'b'), careful)).toEqual([null]);
  });

  it('are those of the line and of the runs it is part of', () => {
    const worked = { ...line!, facts: [fact('mass', 'a')] };
    const runs = [run('other', ['else']), run('own', ['else', worked.line.id])];
    expect(figureSets(worked, { runs }).map((set) => set.run)).toEqual([null, 'the own']);
    expect(figureSets({ ...worked, facts: [] }, { runs: [] })).toEqual([]);
  });
});
