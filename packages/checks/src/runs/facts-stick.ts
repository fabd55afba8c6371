/** Length, marks and way out of a stick, in words. */
import { POINT_MM } from '@runback/geometry';
import type { Stick } from '@runback/job';
import type { Fact, StickMark, StickSheet } from '../fluid-types.ts';
import { say } from '../words.ts';
import { READING_MM } from './marks.ts';
import { roundUp } from './round.ts';
import type { Way } from './way.ts';

const VERIFY = 'Verify by filling; mark the stick on the machine.';
const LENGTH_BASIS =
  'shortest: a string drawn taut inside the bore; longest: along the outside of every bend, an estimate; a stick that snakes in its tube is longer still';

const TILT_BASIS =
  'tilt: a level surface that turns about the middle of the pan, upright walls, one degree the worst way';

const fact = (said: Omit<Fact, 'group'>): Fact => ({ group: 'stick', ...said });

export function stickFacts(way: Way, stick: Stick, sheet: StickSheet): readonly Fact[] {
  const { shortest, middle, longest } = sheet.seatToTip;
  return [
    fact({
      label: 'from its seat to its end',
      text:
        `${say(shortest, way.units)} to ${say(longest, way.units)}; ${say(middle, way.units)} along the middle of ` +
        'the bore',
      basis: LENGTH_BASIS,
      caution: VERIFY,
    }),
    ...sheet.marks.map((mark) => markFact(way, stick, mark)),
    fact({
      label: 'straight room it wants to be pulled out',
      text:
        sheet.pullOut.length > 0
          ? `${say(sheet.pullOut.length, way.units)} out of end ${stick.enters}`
          : 'none: no part of it is stiff, it bends aside',
      basis:
        'length of its stiff part, along the tangent at the end it goes in at; what stands in the way is a check of its own',
      caution: 'Hands and a rag need room beside it.',
    }),
  ];
}

function markFact(way: Way, stick: Stick, mark: StickMark): Fact {
  const { at, doubt, perDegree } = mark;
  const tilt = perDegree === null ? '' : `; moves ${say(perDegree, way.units)} for each degree of tilt`;
  return fact({
    label: `mark "${mark.name}", ${litres(mark.litres)} L`,
    text: `${say(at, way.units)} from its end, ± ${roundUp(doubt - POINT_MM, way.units)}${tilt}`,
    basis: `${mark.from === 'fills' ? fillsBasis(way, stick) : panBasis(way)}${perDegree === null ? '' : `; ${TILT_BASIS}`}`,
    caution: VERIFY,
  });
}

const litres = (value: number): string => String(Number(value.toFixed(2)));

const fillsBasis = (way: Way, { fills }: Stick): string =>
  `measured by filling (${fills.length} fills), even steps between two of them: off by no more than to the nearer of ` +
  `the two while the room is near as wide at both, and by ${say(READING_MM, way.units)} of reading`;

const panBasis = (way: Way): string =>
  `a room with upright walls on a level machine; off by what the stick's way may differ from the middle of the bore, by its end lying anywhere in the bore, ` +
  `and by ${say(READING_MM, way.units)} of reading. What stands in the room and in the tubes is left out`;
