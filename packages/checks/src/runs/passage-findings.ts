/** Whether a stick goes in, and its stiff part round every bend. */
import { type RunWidth, runWidths, type TipPassage, tipPassage } from '@runback/bending';
import { POINT_MM } from '@runback/geometry';
import type { Stick } from '@runback/job';
import { finding } from '../finding.ts';
import { say, sayBoth, thickness } from '../words.ts';
import { roundUp } from './round.ts';
import { across, type Section, type Stiff, sectionsOf, sizes, stiffsOf } from './section.ts';
import { bendName, ofLine, type Placed, placed, type Way } from './way.ts';

const CHECK = 'passage';
const ROOM =
  'largest distance across each part of the stick against the narrowest bore or lip; geometry, no play asked for';
export const TIP_BASIS =
  'plane geometry: both ends of the stiff part on the outer wall, its middle on the inner one; round, smooth bore, bends one by one, no kinks at joints';

/** Says what does not go in; else what the bends say of each stiff part. */
export function goesThrough(way: Way, stick: Stick): readonly Placed[] {
  const narrow = narrowest(way);
  const sections = sectionsOf(stick);
  const tooWide = sections.filter((section) => across(section) >= narrow.diameter);
  if (tooWide.length > 0) return tooWide.map((section) => wide(way, section, narrow));
  const stiffs = stiffsOf(stick);
  if (stiffs.length === 0) return [goesIn(way, sections[0]!, narrow)];
  return stiffs.flatMap((stiff) => roundBends(way, stiff));
}

export const narrowest = (way: Way): RunWidth =>
  runWidths(way.run).reduce((least, next) => (next.diameter < least.diameter ? next : least));

function room(way: Way, section: Section, { line, at, diameter }: RunWidth) {
  const { start, centreline, line: tube } = way.parts[line]!;
  const on = Math.min(Math.max(at - start, 0), centreline.length);
  const lip = diameter < tube.tube.bore;
  const said = lip
    ? `the lip ${say(on, way.units)} from end A${ofLine(way, line)}`
    : `the bore${ofLine(way, line)}`;
  const measured = {
    check: CHECK,
    found: across(section),
    limit: diameter,
    unit: 'mm' as const,
    ...placed(way, line, on),
    path: tube.tube.path,
    basis: ROOM,
  };
  return { said, measured };
}

function wide(way: Way, section: Section, narrow: RunWidth): Placed {
  const { said, measured } = room(way, section, narrow);
  const message =
    `The ${section.name} does not go in: it is ${thickness(across(section), way.units)} across, and ${said} is ` +
    `${thickness(narrow.diameter, way.units)}.`;
  return { part: narrow.line, finding: finding({ ...measured, verdict: 'fail', message }) };
}

function goesIn(way: Way, section: Section, narrow: RunWidth): Placed {
  const { said, measured } = room(way, section, narrow);
  const message =
    `The ${section.name} goes in, ${thickness(across(section), way.units)} across where ${said} is ` +
    `${thickness(narrow.diameter, way.units)}; no part of it is stiff.`;
  return { part: narrow.line, finding: finding({ ...measured, verdict: 'pass', message }) };
}

function roundBends(way: Way, stiff: Stiff): readonly Placed[] {
  const tips = tipPassage(way.run, sizes(stiff));
  const stuck = tips.filter(({ longest }) => longest < stiff.length - POINT_MM);
  if (stuck.length > 0) return stuck.map((tip) => sticks(way, stiff, tip));
  const [tightest] = tips.toSorted((a, b) => a.longest - b.longest);
  return [tightest ? passes(way, stiff, tightest) : noBend(stiff)];
}

const at = (way: Way, tip: TipPassage, length: number) => {
  const bend = way.parts[tip.line]!.centreline.bends[tip.bend]!;
  return {
    check: CHECK,
    found: length,
    limit: tip.longest,
    unit: 'mm' as const,
    ...placed(way, tip.line, (bend.start + bend.end) / 2),
    basis: tip.alone
      ? TIP_BASIS
      : `${TIP_BASIS}; a neighbour is near: the stiff part never reaches it, or passes as on an endless arc of the narrowest bore in reach`,
  };
};

function sticks(way: Way, stiff: Stiff, tip: TipPassage): Placed {
  const [length, longest] = sayBoth(stiff.length, tip.longest, way.units);
  const message =
    `The ${stiff.name}, ${length} long and ${thickness(stiff.thickness, way.units)} thick, sticks in ` +
    `${bendName(way, tip)}: ${longest} at most passes there. Make it shorter or thinner, or bend on a radius of ` +
    `${roundUp(radiusFor(stiff, tip.alone ? way.run[tip.line]!.bore : narrowest(way).diameter), way.units)} or more.`;
  return { part: tip.line, finding: finding({ ...at(way, tip, stiff.length), verdict: 'fail', message }) };
}

/** The radius whose endless arc the stiff part passes: (½L)² = (d − t)(2R + t). */
function radiusFor({ length, thickness: t, width }: Stiff, bore: number): number {
  const open = Math.sqrt(bore ** 2 - (width ?? 0) ** 2);
  return ((length / 2) ** 2 / (open - t) - t) / 2;
}

/** Of the length that passes, what is advised: the model knows no ovality, kink or burr (common practice, no source). */
const ADVISED = 0.8;

function passes(way: Way, stiff: Stiff, tip: TipPassage): Placed {
  const [length, longest] = sayBoth(stiff.length, tip.longest, way.units);
  const spare = stiff.length <= ADVISED * tip.longest;
  const message =
    `The ${stiff.name}, ${length} long, passes every bend; the tightest is ${bendName(way, tip)}, where ` +
    `${longest} would pass.` +
    (spare
      ? ''
      : ` That leaves less than a fifth to spare: drop it through the finished tube before it is fitted.`);
  return {
    part: tip.line,
    finding: finding({ ...at(way, tip, stiff.length), verdict: spare ? 'pass' : 'note', message }),
  };
}

const noBend = (stiff: Stiff): Placed => ({
  part: 0,
  finding: finding({
    check: CHECK,
    verdict: 'pass',
    message: `No bend is in the way of the ${stiff.name}.`,
    unit: '',
    basis: TIP_BASIS,
  }),
});
