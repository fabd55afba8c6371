/** What the bends and steps ask of a stick, in words. */
import type { Stick } from '@runback/job';
import type { Fact, Passage } from '../fluid-types.ts';
import { say, sayAngle, thickness } from '../words.ts';
import { chamferWords, SET_BASIS, STEP_BASIS, stepPlace, TWIST_BASIS } from './blade-findings.ts';
import { frictionOf } from './passage.ts';
import { TIP_BASIS } from './passage-findings.ts';
import { bodyOf, tightestStiff } from './section.ts';
import { bendName, type Way } from './way.ts';

const TRY_IT = 'A fifth to spare is advised; drop the tip through the finished tube before it is fitted.';
const BEND_A_PIECE = 'Yield strengths differ by the batch: bend a piece round a bar of that radius first.';

export function passageFacts(way: Way, stick: Stick, passage: Passage): readonly Fact[] {
  return [
    ...tipFact(way, stick, passage),
    ...setFact(way, passage),
    ...twistFact(way, passage),
    ...passage.steps.map((step) =>
      fact({
        label: `step that catches it ${step.catches}`,
        text:
          `${thickness(step.step, way.units)} ${stepPlace(way, step.line, step.at - way.parts[step.line]!.start)}; ` +
          chamferWords(way, step),
        basis: STEP_BASIS,
        caution: 'Deburr both bores whatever the step: an edge that faces the stick wipes the oil off it.',
      }),
    ),
    pushFact(stick, passage),
  ];
}

const fact = (said: Omit<Fact, 'group'>): Fact => ({ group: 'passage', ...said });

function tipFact(way: Way, stick: Stick, { tips }: Passage): Fact[] {
  const [tightest] = tips.toSorted((a, b) => a.longest - b.longest);
  if (tightest === undefined) return [];
  const stiff = tightestStiff(way, stick);
  const { thickness: thick } = stiff ?? bodyOf(stick);
  const own =
    stiff === null ? 'the stick has no stiff part' : `its ${stiff.name} is ${say(stiff.length, way.units)}`;
  return [
    fact({
      label: 'longest stiff tip that passes',
      text: `${say(tightest.longest, way.units)} of one ${thickness(thick, way.units)} thick, in ${bendName(way, tightest)}; ${own}`,
      basis: TIP_BASIS,
      caution: TRY_IT,
    }),
  ];
}

function setFact(way: Way, { blade }: Passage): Fact[] {
  const [sharpest] = (blade?.bends ?? []).toSorted((a, b) => b.strain - a.strain);
  if (sharpest === undefined) return [];
  const verdict = sharpest.takesSet ? 'it takes a set' : 'it springs back';
  return [
    fact({
      label: 'blade in the sharpest bend',
      text:
        `strained ${(sharpest.strain * 100).toFixed(2)} % in ${bendName(way, sharpest)}, bent to a radius of ` +
        `${say(sharpest.radius, way.units)}: ${verdict}`,
      basis: SET_BASIS,
      caution: BEND_A_PIECE,
    }),
  ];
}

function twistFact(way: Way, { blade }: Passage): Fact[] {
  return (blade?.twists ?? [])
    .filter(({ needs }) => needs > 0)
    .map(({ from, twist, straight, needs }) =>
      fact({
        label: `blade from ${bendName(way, way.laid.bends[from]!)} to ${bendName(way, way.laid.bends[from + 1]!)}`,
        text:
          `twists ${sayAngle(Math.abs(twist))} in ${say(straight, way.units)} of straight; ` +
          `about ${say(needs, way.units)} needed`,
        basis: TWIST_BASIS,
        caution: BEND_A_PIECE,
      }),
    );
}

function pushFact(stick: Stick, { push }: Passage): Fact {
  const { low, high } = frictionOf(stick);
  const range = stick.friction === null ? 'an oiled stick, a rough figure' : 'the job';
  return fact({
    label: 'bends in all, and push',
    text: `${sayAngle(push.angle)}: ${push.low.toFixed(1)} to ${push.high.toFixed(1)} times as hard as in a straight tube`,
    basis: `Euler–Eytelwein, e^(μ·angle), μ ${low} to ${high} (${range}); for a limp stick, its weight and drag in the straights left out`,
    caution: 'A way to compare two routes, not a force.',
  });
}
