/** The figures of a line or a run in words, group by group. */
import type { Fact, FactGroup } from 'runback';
import { painter, plain, wrap } from './terminal.ts';

/** How the text is to come out. */
export interface TextOptions {
  readonly colour: boolean;
  readonly columns: number;
  /** Print the findings that pass and every group of figures, too. */
  readonly all: boolean;
}

/** A line or a run as its figures name it, with the figures to print. */
export interface Figures {
  readonly of: string;
  readonly facts: readonly Fact[];
}

/** Where each basis is told in full: the first that rests on it. Long ones hold for many lines. */
export type Told = ReadonlyMap<string, string>;

const HEADINGS: Readonly<Record<FactGroup, string>> = {
  pockets: 'Liquid and air',
  passage: 'Passage of the stick',
  stick: 'The stick',
  pressure: 'Pressure',
  flow: 'Flow',
  thermal: 'Heat',
  mass: 'Weight',
};
const GROUPS = Object.keys(HEADINGS) as FactGroup[];
/** What a tube is made for; the rest is printed where the job asks for it. */
const FIRST: readonly FactGroup[] = ['pockets', 'passage', 'stick'];
const LEAST_COLUMNS = 40;

/** A sentence broken to the width there is: every line of it behind the indent, all but the first pushed in by two. */
export function block(text: string, indent: string, columns: number): string {
  const room = Math.max(LEAST_COLUMNS, columns) - indent.length;
  return indent + wrap(plain(text), room, '  ').replaceAll('\n', `\n${indent}`);
}

/** Of these facts those that are printed without `--all`, group by group: what was asked for is among them. */
export function shownFacts(
  facts: readonly Fact[],
  asked: readonly FactGroup[],
  all: boolean,
): readonly Fact[] {
  const shown = GROUPS.filter((group) => all || FIRST.includes(group) || asked.includes(group));
  return shown.flatMap((group) => facts.filter((fact) => fact.group === group));
}

export function toldOnce(printed: readonly Figures[]): Told {
  const told = new Map<string, string>();
  for (const { of, facts } of printed)
    for (const { basis } of facts) if (!told.has(basis)) told.set(basis, of);
  return told;
}

/** The figures by group under short headings: label and text, then what they are not and what they rest on. */
export function factsText({ of, facts }: Figures, told: Told, options: TextOptions): string[] {
  return GROUPS.flatMap((group) => {
    const rows = facts.filter((fact) => fact.group === group);
    if (rows.length === 0) return [];
    const heading = `  ${painter(options.colour)('bold', HEADINGS[group])}`;
    return [heading, ...groupText({ of, facts: rows }, told, options)];
  });
}

/** A caution of the whole group stands once under it; else each right under the figures it is about. */
function groupText({ of, facts }: Figures, told: Told, options: TextOptions): string[] {
  const { caution } = facts[0]!;
  const common = facts.length > 1 && facts.every((fact) => fact.caution === caution);
  const elsewhere = (fact: Fact): boolean => told.get(fact.basis) !== of;
  const rows = clusters(facts, common).flatMap((cluster) => {
    const [{ caution, basis }] = cluster;
    const many = countWords(cluster.length);
    return [
      ...cluster.map(({ label, text }) => block(`${label}: ${text}`, '    ', options.columns)),
      ...(common ? [] : cautionText(caution, many, options)),
      ...(elsewhere(cluster[0]) || basis === '' ? [] : basisText(`Basis${many}: ${basis}`, options)),
    ];
  });
  const shared = common ? cautionText(caution, ' for all of these', options) : [];
  return [...rows, ...referred(facts.filter(elsewhere), { told, of: facts.length }, options), ...shared];
}

type Cluster = [Fact, ...Fact[]];

/** Figures that follow each other and rest on the same. */
function clusters(facts: readonly Fact[], common: boolean): readonly Cluster[] {
  const out: Cluster[] = [];
  for (const fact of facts) {
    const last = out.at(-1);
    if (last?.[0].basis === fact.basis && (common || last[0].caution === fact.caution)) last.push(fact);
    else out.push([fact]);
  }
  return out;
}

const countWords = (count: number): string =>
  count === 1 ? '' : count === 2 ? ' for both' : ` for these ${count}`;

const cautionText = (caution: string | null, many: string, { colour, columns }: TextOptions): string[] =>
  caution === null ? [] : [painter(colour)('yellow', block(`Caution${many}: ${caution}`, '      ', columns))];

const basisText = (text: string, { colour, columns }: TextOptions): string[] => [
  painter(colour)('dim', block(text, '      ', columns)),
];

/** One row for everything that rests on what was told before. */
function referred(
  facts: readonly Fact[],
  { told, of }: { readonly told: Told; readonly of: number },
  options: TextOptions,
): string[] {
  if (facts.length === 0) return [];
  const where = [...new Set(facts.map(({ basis }) => told.get(basis)))].join(' and ');
  return basisText(`Basis${facts.length < of ? ' for the others' : ''}: as for ${where} above`, options);
}

/** Where the figures left out are found, told once for all lines and runs: `null` when none was. */
export function leftOut(
  worked: readonly { readonly facts: readonly Fact[] }[],
  printed: readonly Figures[],
): string | null {
  const shown = new Set(printed.flatMap(({ facts }) => facts));
  const groups = GROUPS.filter((group) =>
    worked.some(({ facts }) => facts.some((fact) => fact.group === group && !shown.has(fact))),
  );
  if (groups.length === 0) return null;
  const named = groups.map((group) => HEADINGS[group].toLowerCase());
  return `More figures with --all: ${named.join(', ')}.`;
}
