/** How the machine tips in use: not at all, any way within an angle, or so far to each side. */
import type { JobIssue } from 'runback';
import { AngleInput, type Committed, Pick } from '../../parts/index.ts';
import {
  type AttitudeKind,
  kindOf,
  ofKind,
  SIDES,
  type Side,
  tipEdit,
  tipOf,
  type WrittenAttitudes,
} from '../edits/attitudes.ts';
import { change, set } from './now.ts';

export interface AttitudeProps {
  /** Path of the attitudes. */
  readonly at: string;
  readonly values: WrittenAttitudes | undefined;
  /** For a line: what the job says, which holds when the line has none of its own. */
  readonly inherit?: { readonly values: WrittenAttitudes | undefined; readonly says: string };
  /** "of the job", for undo. */
  readonly of: string;
}

type Choice = AttitudeKind | 'inherit';

const KINDS: readonly { readonly value: Choice; readonly label: string }[] = [
  { value: 'rest', label: 'not at all: at rest only' },
  { value: 'tilt', label: 'any way, within an angle' },
  { value: 'box', label: 'nose and sides, each so far' },
];

export function AttitudeFields({ at, values, inherit, of }: AttitudeProps) {
  const kind: Choice = inherit && values === undefined ? 'inherit' : kindOf(values);
  const choose = (choice: string): Committed => {
    const rest = choice === 'rest' && !inherit;
    const value =
      choice === 'inherit' || rest ? undefined : ofKind(choice as AttitudeKind, values ?? inherit?.values);
    return set(`change the tilting ${of}`, at, value);
  };
  const own = inherit ? [{ value: 'inherit', label: 'as the job’s' }] : [];
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick
          label="In use it tips"
          value={kind}
          options={[...own, ...KINDS]}
          {...(kind === 'inherit' && inherit && { hint: inherit.says })}
          onCommit={choose}
        />
      </div>
      {kind === 'tilt' && (
        <AngleInput
          label="At most, degrees"
          value={values?.tilt}
          lowest={0}
          highest={180}
          onCommit={(tilt) => set(`change the tilting ${of}`, `${at}.tilt`, tilt)}
        />
      )}
      {kind === 'box' &&
        SIDES.map(([side, label]) => (
          <AngleInput
            key={side}
            label={label}
            value={tipOf(values, side)}
            lowest={-180}
            highest={180}
            onCommit={(degrees) => tip({ at, values, of }, [side, degrees ?? 0])}
          />
        ))}
      {kind === 'box' && <p class="setup-wide field-hint">Degrees from rest, to each side.</p>}
    </div>
  );
}

const OTHERS: Readonly<Record<Side, Side>> = {
  noseUp: 'noseDown',
  noseDown: 'noseUp',
  leftDown: 'rightDown',
  rightDown: 'leftDown',
};

/** Two sides that leave nothing between them are refused in words of the sides. */
async function tip(
  { at, values, of }: AttitudeProps,
  [side, degrees]: readonly [Side, number],
): Promise<readonly JobIssue[]> {
  const issues = await change(`change the tilting ${of}`, tipEdit(at, values, [side, degrees]));
  if (degrees + tipOf(values, OTHERS[side]) >= 0) return issues;
  const other = SIDES.find(([one]) => one === OTHERS[side])?.[1].toLowerCase();
  return issues.map((issue) => ({
    ...issue,
    message: `this and “${other}” leave nothing between them`,
    expected: 'two angles that come to 0 or more together',
  }));
}
