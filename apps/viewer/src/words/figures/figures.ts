/** What the liquid and the stick do, as the chosen line and its runs say it. */
import type { Fact, FactGroup, WorkedJob, WorkedLine } from 'runback';

const TITLES: Readonly<Record<FactGroup, string>> = {
  pockets: 'Liquid and air that stay',
  passage: 'Way of the stick',
  stick: 'Stick',
  pressure: 'Pressure',
  flow: 'Flow',
  thermal: 'Heat',
  mass: 'Weight',
};

export interface FigureGroup {
  readonly group: FactGroup;
  readonly title: string;
  /** What is to be said of all of them; `null` when each has its own to say, or none. */
  readonly caution: string | null;
  readonly facts: readonly Fact[];
}

/** Groups in the order they come in, each with all its facts. */
export function factGroups(facts: readonly Fact[]): readonly FigureGroup[] {
  const groups = [...new Set(facts.map(({ group }) => group))];
  return groups.map((group) => {
    const here = facts.filter((fact) => fact.group === group);
    return { group, title: TITLES[group], caution: sharedCaution(here), facts: here };
  });
}

function sharedCaution([first, ...others]: readonly Fact[]): string | null {
  const same = others.length > 0 && others.every(({ caution }) => caution === first?.caution);
  return same ? (first?.caution ?? null) : null;
}

export interface FigureSet {
  readonly id: string;
  /** `null` for the line itself. */
  readonly run: string | null;
  readonly groups: readonly FigureGroup[];
}

/** The line's own figures, then those of each run that it is part of; sets without a figure are left out. */
export function figureSets(
  { line, facts }: WorkedLine,
  { runs }: Pick<WorkedJob, 'runs'>,
): readonly FigureSet[] {
  const own = { id: line.id, run: null, groups: factGroups(facts) };
  const joined = runs
    .filter(({ run }) => run.lines.includes(line.id))
    .map(({ run, facts: said }) => ({ id: run.id, run: run.name, groups: factGroups(said) }));
  return [own, ...joined].filter(({ groups }) => groups.length > 0);
}
