import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fact } from '../test/stick.ts';
import { basisLines, basisNotes } from './page-basis.ts';

const notesOf = (bases: readonly string[]) =>
  basisNotes(bases.map((basis) => fact('pockets', 'x', { basis })));

describe('what figures rest on', () => {
  it('is said once where they share it, clause by clause, brackets kept whole', () => {
    const bases = [
      'bore; no film (rough; or not); end A open',
      'the job',
      'bore; no film (rough; or not); by bound',
    ];
    expect(notesOf(bases)).toEqual([
      { text: 'bore; no film (rough; or not)', of: [0, 2] },
      { text: 'end A open', of: [0] },
      { text: 'the job', of: [1] },
      { text: 'by bound', of: [2] },
    ]);
  });

  it('loses no clause and gives none to a figure that has it not', () => {
    const clause = fc.constantFrom('bore', 'no film', 'end A open', 'by bound', 'rough (or; not)', 'the job');
    const bases = fc.array(
      fc.uniqueArray(clause, { maxLength: 5 }).map((of) => of.join('; ')),
      { maxLength: 6 },
    );
    const sorted = (basis: string): string[] =>
      basis
        .split(/; (?![^(]*\))/)
        .filter((of) => of !== '')
        .sort();
    fc.assert(
      fc.property(bases, (all) => {
        const notes = notesOf(all);
        all.forEach((basis, i) => {
          const own = notes.filter(({ of }) => of.includes(i)).map(({ text }) => text);
          expect(sorted(own.join('; '))).toEqual(sorted(basis));
        });
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it('has no number where it is one note, and short notes share a line', () => {
    expect(basisLines(notesOf(['the job', 'the job']))).toEqual(['basis: the job']);
    const long = 'worked out at length '.repeat(5).trim();
    expect(basisLines(notesOf(['one', 'two', long, 'four']))).toEqual([
      'basis 1: one · 2: two',
      `basis 3: ${long}`,
      'basis 4: four',
    ]);
    expect(basisLines([])).toEqual([]);
  });
});
