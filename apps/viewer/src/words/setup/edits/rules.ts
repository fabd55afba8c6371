/** Published rules for drains: one takes the place of a least fall of the line's own. */
import type { Catalogue, JobEdit } from 'runback';
import type { WrittenFall } from './fall.ts';
import type { Choice } from './tubes.ts';
import { entry } from './written.ts';

export const NO_RULE = '';

export const ruleChoices = ({ drainRules }: Catalogue): readonly Choice[] => [
  { value: NO_RULE, label: 'none: the fall below' },
  ...Object.entries(drainRules).map(
    ([
      value,
      {
        name,
        fraction: [rise, run],
      },
    ]) => ({
      value,
      label: `${name}, ${rise}:${run}`,
    }),
  ),
];

/** Where a rule is from; `undefined` for none. */
export const ruleSource = ({ drainRules }: Catalogue, rule: string | undefined): string | undefined =>
  entry(drainRules, rule ?? NO_RULE)?.source;

/** "1:48" of a rule. */
export const ruleFall = ({ drainRules }: Catalogue, rule: string): string =>
  entry(drainRules, rule)?.fraction.join(':') ?? rule;

/** Takes a rule, and with it the line's own least fall out; `at` is the path of the line. */
export const ruleEdits = (at: string, rule: string): readonly JobEdit[] =>
  rule === NO_RULE
    ? [{ path: `${at}.drain.rule`, value: undefined }]
    : [
        { path: `${at}.drain.minSlope`, value: undefined },
        { path: `${at}.drain.rule`, value: rule },
      ];

export type LimitKey = 'minSlope' | 'minSlopeTilted';

/** Writes a least fall; one at rest takes the rule out. `at` is the path of the drain. */
export const limitEdits = (
  rule: string | undefined,
  at: string,
  [key, fall]: readonly [LimitKey, WrittenFall | undefined],
): readonly JobEdit[] => {
  const written = { path: `${at}.${key}`, value: fall };
  const instead = key === 'minSlope' && fall !== undefined && rule !== undefined;
  return instead ? [{ path: `${at}.rule`, value: undefined }, written] : [written];
};
