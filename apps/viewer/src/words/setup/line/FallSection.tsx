/** Whether and how the line must drain. */
import { catalogue } from 'runback';
import { Pick } from '../../parts/index.ts';
import { FallInput } from '../bits/inputs.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { limitEdits, NO_RULE, ruleChoices, ruleEdits, ruleSource } from '../edits/rules.ts';
import { entry } from '../edits/written.ts';

const NONE = '';
const ENDS = [
  { value: NONE, label: 'slope is not judged' },
  { value: 'A', label: 'to end A' },
  { value: 'Z', label: 'to end Z' },
  { value: 'both', label: 'to both ends, from one crest' },
];

/** The two limits, as people say them. */
const LIMITS = [
  ['minSlope', 'Least fall at rest'],
  ['minSlopeTilted', 'Tilted: more than'],
] as const;

export function FallSection({ now }: { readonly now: MeasuredNow }) {
  const { job, line, own, at } = now;
  const service = entry(job.services, line.service.id);
  const source = ruleSource(catalogue, own.drain?.rule);
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick
          label="It drains"
          value={own.drain?.to ?? NONE}
          options={ENDS}
          onCommit={(to) =>
            to === NONE
              ? set(`do not judge the fall of ${line.name}`, `${at}.drain`, undefined)
              : set(`change where ${line.name} drains`, `${at}.drain.to`, to)
          }
        />
      </div>
      {line.drain && (
        <div class="setup-wide">
          <Pick
            label="By the rule of"
            value={own.drain?.rule ?? NO_RULE}
            options={ruleChoices(catalogue)}
            {...(source !== undefined && { hint: source })}
            onCommit={(rule) => change(`change the rule ${line.name} drains by`, ...ruleEdits(at, rule))}
          />
        </div>
      )}
      {line.drain &&
        LIMITS.map(([key, label]) => (
          <FallInput
            key={key}
            label={label}
            value={own.drain?.[key]}
            figure={line.drain![key]}
            elsewhere={service?.[key] === undefined ? 'catalogue' : 'job'}
            onCommit={(fall) =>
              change(
                `change the fall of ${line.name}`,
                ...limitEdits(own.drain?.rule, `${at}.drain`, [key, fall]),
              )
            }
          />
        ))}
    </div>
  );
}
