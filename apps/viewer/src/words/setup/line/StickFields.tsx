/** The stick of a line or of a run: its kind and sizes, how it is seated, and what it is read by. */
import { catalogue, type Vec3 } from 'runback';
import { LengthInput, Pick, TextInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { ReadInput } from '../bits/inputs.tsx';
import { change, type JobNow, set } from '../bits/now.ts';
import { Group } from '../bits/Section.tsx';
import {
  KINDS,
  kindEdits,
  newStick,
  readFriction,
  type StickKind,
  type StickPlace,
  type TipKey,
  tipEdit,
  type WrittenStick,
} from '../edits/stick.ts';
import { materialChoices } from '../edits/tubes.ts';
import { Pan, StickMarks } from './StickMarks.tsx';

export interface StickProps {
  readonly now: JobNow;
  readonly stick: WrittenStick | undefined;
  /** Path of the stick. */
  readonly at: string;
  /** What it goes through, for undo. */
  readonly of: string;
  /** The end its tip comes out at, mm; where a pan is begun. */
  readonly foot: Vec3;
}

/** What the parts of it share. */
export interface StickPart {
  readonly now: JobNow;
  readonly place: StickPlace;
  readonly of: string;
  readonly foot: Vec3;
}

export interface PartProps {
  readonly part: StickPart;
}

export function StickFields({ now, stick, at, of, foot }: StickProps) {
  if (!stick)
    return (
      <div class="setup-row">
        <span class="field-hint">It has no stick of its own.</span>
        <Act label="Put a stick in" onAct={() => set(`put a stick in ${of}`, at, newStick(now.units))} />
      </div>
    );
  const part: StickPart = { now, place: { stick, at, units: now.units }, of, foot };
  return (
    <>
      <Sizes part={part} />
      <Tip part={part} />
      <Seated part={part} />
      <Pan part={part} />
      <StickMarks part={part} />
      <TextInput
        label="Note on the stick"
        multiline
        longest={2000}
        value={stick.note}
        onCommit={(note) => set(`note on the stick in ${of}`, `${at}.note`, note)}
      />
      <Act
        look="btn-quiet"
        label="Take the stick out"
        onAct={() => set(`take the stick out of ${of}`, at, undefined)}
      />
    </>
  );
}

const ENDS = [
  { value: 'A', label: 'end A' },
  { value: 'Z', label: 'end Z' },
];
const UNSAID = '';

function Sizes({ part: { now, place, of } }: PartProps) {
  const { stick, at, units } = place;
  const cable = stick.kind === 'cable';
  const size = (key: 'thickness' | 'width' | 'link', label: string) => (
    <LengthInput
      label={label}
      value={stick[key]}
      units={units}
      sign="more than 0"
      onCommit={(value) => set(`change the stick in ${of}`, `${at}.${key}`, value)}
    />
  );
  return (
    <div class="setup-grid">
      <Pick
        label="Kind"
        value={stick.kind}
        options={KINDS}
        onCommit={(kind) => change(`change the stick in ${of}`, ...kindEdits(place, kind as StickKind))}
      />
      <Pick
        label="It goes in at"
        value={stick.enters}
        options={ENDS}
        onCommit={(end) => set(`change where the stick enters ${of}`, `${at}.enters`, end)}
      />
      <div class="setup-wide">
        <Pick
          label="Material"
          value={stick.material ?? UNSAID}
          options={[{ value: UNSAID, label: 'not given' }, ...materialChoices(now.job, catalogue)]}
          {...(stick.material === undefined && {
            hint: 'without it nothing tells whether it springs back from the bends',
          })}
          onCommit={(id) =>
            set(`change the stick in ${of}`, `${at}.material`, id === UNSAID ? undefined : id)
          }
        />
      </div>
      {size('thickness', cable ? 'Diameter' : 'Thickness')}
      {!cable && size('width', 'Width')}
      {stick.kind === 'links' && size('link', 'Length of a link')}
    </div>
  );
}

const TIP: readonly (readonly [TipKey, string, string])[] = [
  ['length', 'Length', 'no tip'],
  ['thickness', 'Thickness', ''],
  ['width', 'Width', 'as the stick'],
];

function Tip({ part: { place, of } }: PartProps) {
  const { tip } = place.stick;
  return (
    <Group name="Stiff tip, at the end that goes in first">
      {TIP.map(([key, label, placeholder]) => (
        <LengthInput
          key={key}
          label={label}
          value={tip?.[key]}
          units={place.units}
          sign="more than 0"
          optional={key !== 'thickness'}
          placeholder={placeholder}
          disabled={key !== 'length' && tip === undefined}
          onCommit={(value) => change(`change the tip of the stick in ${of}`, tipEdit(place, [key, value]))}
        />
      ))}
    </Group>
  );
}

const SEATED = [
  ['seat', 'Seat of the cap', 'outward from the end it goes in at'],
  ['beyond', 'Past the far end', 'how far its tip stands out, seated'],
] as const;

function Seated({ part: { place, of } }: PartProps) {
  const { stick, at, units } = place;
  return (
    <Group name="How it is seated">
      {SEATED.map(([key, label, hint]) => (
        <LengthInput
          key={key}
          label={label}
          value={stick[key]}
          units={units}
          optional
          placeholder="0"
          hint={hint}
          onCommit={(value) => set(`change how the stick sits in ${of}`, `${at}.${key}`, value)}
        />
      ))}
      <ReadInput
        label="Friction on the tube"
        shown={stick.friction?.join(' to ')}
        placeholder="the usual range"
        hint="lowest to highest, like 0.1 to 0.3"
        optional
        read={readFriction}
        onCommit={(value) => set(`change the friction in ${of}`, `${at}.friction`, value)}
      />
    </Group>
  );
}
