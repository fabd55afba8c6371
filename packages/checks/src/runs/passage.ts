/** Whether a stick goes through: the figures. */
import { bladePassage, jointSteps, leadIn, pushFactor, STICK_FRICTION, tipPassage } from '@runback/bending';
import { type Stick, toRadians } from '@runback/job';
import type { Passage, StepInWay } from '../fluid-types.ts';
import { bladeOf, bodyOf, sizes, tightestStiff } from './section.ts';
import type { Way } from './way.ts';

/** Of the cone that cures a step, to the axis of the tube, degrees: a lead that a blade follows easily. */
export const LEAD_DEG = 15;

/** What the bends and steps of a way ask of a stick. Without a stiff part the tips are those of its own section. */
export function passageOf(way: Way, stick: Stick): Passage {
  const stiff = tightestStiff(way, stick);
  const blade = bladeOf(stick);
  const friction = frictionOf(stick);
  return {
    enters: stick.enters,
    tips: tipPassage(way.run, sizes(stiff ?? bodyOf(stick))),
    stiff: stiff?.length ?? null,
    blade: blade && bladePassage(way.run, blade),
    steps: jointSteps(way.run, stick.enters).map((step): StepInWay => {
      const lead = leadIn({ step: step.step, angle: toRadians(LEAD_DEG), friction: friction.high });
      return { ...step, lead };
    }),
    push: pushFactor(way.run, friction),
  };
}

/** The stick's own friction, else the usual range of an oiled one. */
export const frictionOf = ({ friction }: Stick): { readonly low: number; readonly high: number } =>
  friction === null ? STICK_FRICTION : { low: friction.low.value, high: friction.high.value };
