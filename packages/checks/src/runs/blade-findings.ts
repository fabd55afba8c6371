/** What bends and turns do to a flat blade, and the steps that catch a stick. */
import type { Blade, BladeBend, BladePassage, BladeTwist } from '@runback/bending';
import { ANGLE_RAD, POINT_MM } from '@runback/geometry';
import type { Stick } from '@runback/job';
import { finding, unjudged } from '../finding.ts';
import type { Passage, StepInWay } from '../fluid-types.ts';
import { say, sayAngle, thickness } from '../words.ts';
import { LEAD_DEG } from './passage.ts';
import { roundDown, roundUp } from './round.ts';
import { bladeOf } from './section.ts';
import { bendName, type Placed, partAt, placed, placeOf, type Way, whereOn } from './way.ts';

const CHECK = 'passage';
export const SET_BASIS =
  'bending strain t/(2R) of a strip pulled against the inner wall, against yield over modulus; plane sections stay plane, bend and twist not added up';
export const TWIST_BASIS =
  'a blade lies flat in each bend and twists in the straight between, as far as yield lets it spring back (thin strip in torsion): good to half and double';
export const STEP_BASIS =
  'half the difference of the bores, fittings and lips included, all round; how the parts sit in the joint is not in it';

/** Whether a blade springs back from every bend and has the length to twist. */
export function bladeTakes(way: Way, stick: Stick, passage: Passage): readonly Placed[] {
  if (stick.kind !== 'blade') return [];
  const blade = bladeOf(stick);
  if (blade === null || passage.blade === null) return [unknownMetal(way, stick)];
  return [...sets(way, blade, passage.blade), ...twists(way, passage.blade)];
}

function unknownMetal(way: Way, stick: Stick): Placed {
  const message =
    'Whether the blade takes a set is not judged: the modulus and the yield strength of its material are not given.';
  const path = `${stick.path}.material`;
  return { part: partAt(way, stick.enters), finding: unjudged(CHECK, message, { path, basis: SET_BASIS }) };
}

function sets(way: Way, blade: Blade, { bends }: BladePassage): readonly Placed[] {
  const set = bends.filter((bend) => bend.takesSet);
  if (set.length > 0) return set.map((bend) => takesSet(way, blade, bend));
  const [sharpest] = bends.toSorted((a, b) => b.strain - a.strain);
  if (sharpest === undefined) return [];
  const message =
    `The blade springs back from every bend: strained ${percent(sharpest.strain)} at most, in ` +
    `${bendName(way, sharpest)}; its metal springs back up to ${percent(blade.yieldMPa / blade.youngsMPa)}.`;
  return [
    {
      part: sharpest.line,
      finding: finding({ ...strained(way, blade, sharpest), verdict: 'pass', message }),
    },
  ];
}

const percent = (strain: number): string => `${(strain * 100).toFixed(2)} %`;

function strained(way: Way, blade: Blade, { line, bend, strain }: BladeBend) {
  const { start, end } = way.parts[line]!.centreline.bends[bend]!;
  return {
    check: CHECK,
    found: strain * 100,
    limit: (blade.yieldMPa / blade.youngsMPa) * 100,
    unit: 'percent' as const,
    ...placed(way, line, (start + end) / 2),
    basis: SET_BASIS,
  };
}

function takesSet(way: Way, blade: Blade, bend: BladeBend): Placed {
  const { radius, thinnest } = cureOf(way, blade, bend);
  const message =
    `The blade takes a set in ${bendName(way, bend)}: strained ${percent(bend.strain)}, and its metal springs back up to ` +
    `${percent(blade.yieldMPa / blade.youngsMPa)}. Make it ${roundDown(thinnest, way.units)} thick or less, or bend on a ` +
    `radius of ${roundUp(radius, way.units)} or more.`;
  return {
    part: bend.line,
    finding: finding({ ...strained(way, blade, bend), verdict: 'fail', message }),
  };
}

/** The thickest blade in this bend and the smallest radius for this blade: t = 2ε·(R − ½(open − t)), solved for each. */
function cureOf(way: Way, blade: Blade, bend: BladeBend) {
  const strain = blade.yieldMPa / blade.youngsMPa;
  const open = Math.sqrt(Math.max(0, way.run[bend.line]!.bore ** 2 - blade.width ** 2));
  const bent = way.parts[bend.line]!.centreline.bends[bend.bend]!.radius;
  return {
    radius: blade.thickness / (2 * strain) + Math.max(0, open - blade.thickness) / 2,
    thinnest: (2 * strain * (bent - open / 2)) / (1 - strain),
  };
}

function twists(way: Way, { twists: all }: BladePassage): readonly Placed[] {
  const turned = all.filter(({ twist }) => Math.abs(twist) > ANGLE_RAD);
  const short = turned.filter(({ enough }) => !enough);
  if (short.length > 0) return short.map((twist) => tooShort(way, twist));
  const [tightest] = turned.toSorted((a, b) => a.straight - a.needs - (b.straight - b.needs));
  if (tightest === undefined) return [];
  const message =
    `The blade has the straight to twist in from the plane of each bend to that of the next; the tightest is ${betweenBends(way, tightest)}: ` +
    `${say(tightest.straight, way.units)} where about ${say(tightest.needs, way.units)} are needed.`;
  return [twistFinding(way, tightest, { verdict: 'pass', message })];
}

function tooShort(way: Way, twist: BladeTwist): Placed {
  const message =
    `The blade must twist ${sayAngle(Math.abs(twist.twist))} ${betweenBends(way, twist)} and has ` +
    `${say(twist.straight, way.units)} of straight for it; it needs about ${say(twist.needs, way.units)}, or it takes a set ` +
    'or rides on its edge. Give it more straight, bend in one plane, or use a cable.';
  return twistFinding(way, twist, { verdict: 'note', message });
}

const betweenBends = (way: Way, { from }: BladeTwist): string =>
  `between ${bendName(way, way.laid.bends[from]!)} and ${bendName(way, way.laid.bends[from + 1]!)}`;

function twistFinding(
  way: Way,
  { from, straight, needs }: BladeTwist,
  said: { readonly verdict: 'pass' | 'note'; readonly message: string },
): Placed {
  const [a, b] = [way.laid.bends[from]!, way.laid.bends[from + 1]!];
  const { part, at } = placeOf(way, (a.at + a.arc.length + b.at) / 2);
  const figures = { found: straight, limit: needs, unit: 'mm' as const };
  return {
    part,
    finding: finding({ check: CHECK, ...said, ...figures, ...placed(way, part, at), basis: TWIST_BASIS }),
  };
}

/** Every step that catches the stick, with the cone that cures it. */
export const steps = (way: Way, passage: Passage): readonly Placed[] =>
  passage.steps.map((step) => stepFinding(way, step));

function stepFinding(way: Way, step: StepInWay): Placed {
  const at = step.at - way.parts[step.line]!.start;
  const message =
    `A step of ${thickness(step.step, way.units)} ${stepPlace(way, step.line, at)} catches the stick ${step.catches}: ` +
    `${chamferWords(way, step)}.`;
  const figures = { found: step.step, limit: 0, unit: 'mm' as const };
  return {
    part: step.line,
    finding: finding({
      check: CHECK,
      verdict: 'note',
      message,
      ...figures,
      ...placed(way, step.line, at),
      basis: STEP_BASIS,
    }),
  };
}

/** What leads the stick over a step; a chamfer that would take the whole wall of the narrower tube is none. */
export function chamferWords(way: Way, { step, at, lead }: StepInWay): string {
  const cone = `${LEAD_DEG}° to the axis, ${roundUp(lead.length, way.units)} long`;
  const joint = way.parts.find(({ start }, i) => i > 0 && Math.abs(start - at) <= POINT_MM);
  const before = joint && way.parts[way.parts.indexOf(joint) - 1]!;
  // The edge of a fitting's bore is no wall of a tube.
  if (!joint || !before || joint.line.endA.opening !== null || before.line.endZ.opening !== null)
    return `chamfer it ${cone}`;
  const narrow = joint.line.tube.bore < before.line.tube.bore ? joint.line : before.line;
  const { id, tube } = narrow;
  return step < tube.wall - POINT_MM
    ? `chamfer the mouth of "${id}" inside, ${cone}`
    : `the ${thickness(tube.wall, way.units)} wall of "${id}" leaves nothing to chamfer; a reducer or a sleeve with a cone ${cone}, leads it over`;
}

/** At an end when it is there, else where it is. */
export function stepPlace(way: Way, part: number, at: number): string {
  const { centreline, line } = way.parts[part]!;
  const name = way.parts.length > 1 ? ` of "${line.id}"` : '';
  if (at <= 0) return `at end A${name}`;
  return at >= centreline.length ? `at end Z${name}` : whereOn(way, part, at);
}
