/** One end of the line: how it is made, what it is seated in, its nut and sleeve. */
import { catalogue, type Line } from 'runback';
import {
  AngleInput,
  type Committed,
  LengthInput,
  Pick,
  TextInput,
  type WrittenLength,
} from '../../parts/index.ts';
import { FigureInput } from '../bits/inputs.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { Group } from '../bits/Section.tsx';
import { fittingChoices, type NutKey, nutEdit, sleeveEdit } from '../edits/ends.ts';
import type { WrittenEnd } from '../edits/written.ts';
import { Cautions } from './Cautions.tsx';
import { DirectionField } from './DirectionField.tsx';
import { JoinsField } from './JoinsField.tsx';

export interface EndProps {
  readonly now: MeasuredNow;
  readonly end: 'A' | 'Z';
}

/** What the parts of an end share. */
export interface EndPart {
  readonly now: MeasuredNow;
  readonly written: WrittenEnd;
  readonly worked: Line['endA'];
  /** Path of the end. */
  readonly at: string;
  /** "end A of Fuel feed" */
  readonly name: string;
}

export function EndSection({ now, end }: EndProps) {
  const key = `end${end}` as const;
  const part: EndPart = {
    now,
    written: now.own[key] ?? {},
    worked: now.line[key],
    at: `${now.at}.${key}`,
    name: `end ${end} of ${now.line.name}`,
  };
  const { written, at, name } = part;
  return (
    <>
      <Making part={part} />
      <Seat part={part} />
      <NutAndSleeve part={part} />
      <TextInput
        label={`Note on end ${end}`}
        multiline
        longest={2000}
        value={written.note}
        onCommit={(note) => set(`note on ${name}`, `${at}.note`, note)}
      />
    </>
  );
}

interface PartProps {
  readonly part: EndPart;
}

const UNSAID = '';

function Making({ part: { now, written, worked, at, name } }: PartProps) {
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick
          label="Fitting"
          value={written.fitting ?? 'plain'}
          options={fittingChoices(now.job, catalogue)}
          onCommit={(fitting) => set(`change the fitting of ${name}`, `${at}.fitting`, fitting)}
        />
        <Cautions of={worked.fitting.name} cautions={worked.fitting.cautions} />
      </div>
      <Pick
        label="Formed"
        value={written.flareWhen ?? UNSAID}
        options={[
          { value: UNSAID, label: `not said: ${worked.flareWhen}` },
          { value: 'before', label: 'before bending' },
          { value: 'after', label: 'after bending' },
        ]}
        onCommit={(word) =>
          set(`say when ${name} is formed`, `${at}.flareWhen`, word === UNSAID ? undefined : word)
        }
      />
      <FigureInput
        label="Spare, cut off last"
        value={written.spare}
        figure={worked.spare}
        units={now.units}
        onCommit={(spare) => set(`change the spare of ${name}`, `${at}.spare`, spare)}
      />
    </div>
  );
}

function Seat({ part }: PartProps) {
  const { now, written, at, name } = part;
  return (
    <Group name="Where it is seated">
      <JoinsField part={part} />
      <LengthInput
        label="Not judged within"
        value={written.free}
        units={now.units}
        sign="not negative"
        optional
        placeholder="0"
        hint="of what it is seated in"
        onCommit={(free) => set(`change how far ${name} is free`, `${at}.free`, free)}
      />
      <LengthInput
        label="Opening"
        value={written.opening}
        units={now.units}
        sign="more than 0"
        optional
        placeholder="the bore"
        hint="smallest inside, if less than the bore: a lip"
        onCommit={(opening) => set(`change the opening of ${name}`, `${at}.opening`, opening)}
      />
      <Pick
        label="What it meets"
        value={written.far ?? 'rigid'}
        options={[
          { value: 'rigid', label: 'rigid' },
          { value: 'hose', label: 'a hose' },
        ]}
        onCommit={(far) => set(`say what ${name} meets`, `${at}.far`, far)}
      />
      <DirectionField part={part} />
      <AngleInput
        label="Misfit it forgives"
        value={written.misfit}
        lowest={0}
        highest={180}
        optional
        placeholder="the check’s own"
        hint="degrees"
        onCommit={(misfit) => set(`change the misfit of ${name}`, `${at}.misfit`, misfit)}
      />
    </Group>
  );
}

const NUT: readonly (readonly [NutKey, string])[] = [
  ['length', 'Nut length'],
  ['bore', 'Nut bore'],
  ['acrossFlats', 'Nut across flats'],
];

function NutAndSleeve({ part: { now, written, at, name } }: PartProps) {
  const { nut, sleeve } = written;
  const put = (key: NutKey, value: WrittenLength | undefined): Committed =>
    change(`change the nut of ${name}`, nutEdit(at, [key, value]));
  return (
    <Group name="Nut and sleeve">
      {NUT.map(([key, label]) => (
        <LengthInput
          key={key}
          label={label}
          value={nut?.[key]}
          units={now.units}
          sign="more than 0"
          optional
          placeholder={key !== 'length' ? 'not known' : 'no nut'}
          disabled={key !== 'length' && nut === undefined}
          onCommit={(value) => put(key, value)}
        />
      ))}
      <LengthInput
        label="Sleeve length"
        value={sleeve?.length}
        units={now.units}
        sign="more than 0"
        optional
        placeholder="no sleeve"
        onCommit={(length) => change(`change the sleeve of ${name}`, sleeveEdit(at, length))}
      />
    </Group>
  );
}
