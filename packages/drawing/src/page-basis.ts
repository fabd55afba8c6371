/** What figures rest on, said once for all of them: numbered notes that the figures name. */
import type { Fact } from '@runback/checks';

export interface BasisNote {
  readonly text: string;
  /** Places in the list of figures that rest on it. */
  readonly of: readonly number[];
}

/**
 * The clauses of all bases, those that always come together as one note, in the order they come. Taken together the
 * notes of a figure say what its basis says, no more and no less.
 */
export function basisNotes(facts: readonly Fact[]): readonly BasisNote[] {
  const users = new Map<string, number[]>();
  facts.forEach(({ basis }, i) => {
    for (const clause of new Set(clausesOf(basis))) users.set(clause, [...(users.get(clause) ?? []), i]);
  });
  const notes = new Map<string, { clauses: string[]; of: readonly number[] }>();
  for (const [clause, of] of users) {
    const note = notes.get(of.join());
    if (note) note.clauses.push(clause);
    else notes.set(of.join(), { clauses: [clause], of });
  }
  return [...notes.values()].map(({ clauses, of }) => ({ text: clauses.join('; '), of }));
}

/** A note of no more letters shares its line with its neighbours. */
const SHORT = 60;

/** The notes to print: `basis 2: …`, several short ones on a line; a single one without a number. */
export function basisLines(notes: readonly BasisNote[]): readonly string[] {
  if (notes.length === 1) return [`basis: ${notes[0]!.text}`];
  const lines: { text: string; open: boolean }[] = [];
  for (const [i, { text }] of notes.entries()) {
    const last = lines.at(-1);
    const short = text.length <= SHORT;
    if (last?.open && short) last.text += ` · ${i + 1}: ${text}`;
    else lines.push({ text: `basis ${i + 1}: ${text}`, open: short });
  }
  return lines.map(({ text }) => text);
}

/** Split at its semicolons, but not inside brackets. */
function clausesOf(basis: string): readonly string[] {
  const clauses: string[] = [];
  let depth = 0;
  for (const [i, part] of basis.split('; ').entries()) {
    if (i > 0 && depth > 0) clauses[clauses.length - 1] += `; ${part}`;
    else clauses.push(part);
    const brackets = part.match(/[()]/gu) ?? [];
    depth = brackets.reduce((now, bracket) => Math.max(0, now + (bracket === '(' ? 1 : -1)), depth);
  }
  return clauses.filter((clause) => clause.trim() !== '');
}
