/** What a stick is read by: the room the liquid stands in, what was filled in and read, and the marks wanted. */
import { LengthInput, TextInput } from '../../parts/index.ts';
import { writtenNumber } from '../../parts/read.ts';
import { Act } from '../bits/Act.tsx';
import { PointInput, ReadInput } from '../bits/inputs.tsx';
import { change, set } from '../bits/now.ts';
import { readNumber } from '../edits/duty.ts';
import { addFill, addMark, newPan, removeFill } from '../edits/stick.ts';
import type { PartProps } from './StickFields.tsx';

const SIZES = ['along the machine', 'across it'] as const;

export function Pan({ part: { place, of, foot } }: PartProps) {
  const { stick, at, units } = place;
  const { pan } = stick;
  const label = `change the pan under ${of}`;
  if (!pan)
    return (
      <div class="setup-row">
        <span class="field-hint">
          No pan given: how the reading moves with the tilt is not known, nor a mark without fills.
        </span>
        <Act label="Give the pan" onAct={() => set(label, `${at}.pan`, newPan(foot, units))} />
      </div>
    );
  return (
    <fieldset class="setup-group setup-stack">
      <legend>Pan the liquid stands in, its walls upright</legend>
      <PointInput
        name="Middle of its floor"
        value={pan.middle}
        units={units}
        onCommit={(axis, value) => set(label, `${at}.pan.middle[${axis}]`, value)}
      />
      <div class="setup-grid">
        {SIZES.map((side, k) => (
          <LengthInput
            key={side}
            label={`Inside, ${side}`}
            value={pan.size[k]}
            units={units}
            sign="more than 0"
            onCommit={(value) => set(label, `${at}.pan.size[${k}]`, value)}
          />
        ))}
      </div>
      <Act look="btn-quiet" label="Leave the pan unsaid" onAct={() => set(label, `${at}.pan`, undefined)} />
    </fieldset>
  );
}

export function StickMarks({ part }: PartProps) {
  return (
    <>
      <Fills part={part} />
      <Marks part={part} />
    </>
  );
}

interface LitresProps {
  readonly label: string;
  readonly value: number;
  readonly path: string;
  readonly of: string;
}

function Litres({ label, value, path, of }: LitresProps) {
  return (
    <ReadInput
      label={label}
      shown={writtenNumber(value)}
      optional={false}
      read={readNumber}
      onCommit={(litres) => set(`change the litres of ${of}`, path, litres)}
    />
  );
}

function Fills({ part: { place, of } }: PartProps) {
  const { stick, at, units } = place;
  const fills = stick.fills ?? [];
  return (
    <fieldset class="setup-group setup-stack">
      <legend>Filled in, and read on the stick from its tip</legend>
      {fills.map((fill, i) => (
        // Fills have no names: their places in the list are all there is.
        <div key={i} class="setup-measure">
          <Litres
            label={`Fill ${i + 1}, litres`}
            value={fill.litres}
            path={`${at}.fills[${i}].litres`}
            of={of}
          />
          <LengthInput
            label={`Fill ${i + 1}, wet to`}
            value={fill.at}
            units={units}
            sign="not negative"
            onCommit={(value) => set(`change a fill of ${of}`, `${at}.fills[${i}].at`, value)}
          />
          <Act
            look="btn-quiet"
            label="×"
            name={`Remove fill ${i + 1}`}
            onAct={() => change(`remove a fill of ${of}`, removeFill(place, i))}
          />
        </div>
      ))}
      <div class="setup-row">
        <Act
          label={fills.length === 0 ? 'Give two fills' : 'Add a fill'}
          onAct={() => change(`add a fill to ${of}`, addFill(place))}
        />
        <span class="field-hint">All there is in the pan then, from the least to the most.</span>
      </div>
    </fieldset>
  );
}

function Marks({ part: { place, of } }: PartProps) {
  const { stick, at } = place;
  return (
    <fieldset class="setup-group setup-stack">
      <legend>Marks wanted</legend>
      {stick.levels?.map((mark, i) => (
        <div key={i} class="setup-measure">
          <TextInput
            label={`Mark ${i + 1}`}
            value={mark.name}
            optional={false}
            onCommit={(name) => set(`rename a mark of ${of}`, `${at}.levels[${i}].name`, name)}
          />
          <Litres
            label={`Mark ${i + 1}, litres`}
            value={mark.litres}
            path={`${at}.levels[${i}].litres`}
            of={of}
          />
          <Act
            look="btn-quiet"
            label="×"
            name={`Remove mark ${i + 1}`}
            onAct={() => set(`remove a mark of ${of}`, `${at}.levels[${i}]`, undefined)}
          />
        </div>
      ))}
      <div class="setup-row">
        <Act label="Add a mark" onAct={() => change(`add a mark to ${of}`, addMark(place))} />
      </div>
    </fieldset>
  );
}
