/** What runs in the line, what it has to stand, and how air leaves it. */
import { catalogue } from 'runback';
import { Pick } from '../../parts/index.ts';
import { writtenNumber } from '../../parts/read.ts';
import { ReadInput } from '../bits/inputs.tsx';
import { type MeasuredNow, set } from '../bits/now.ts';
import { Group } from '../bits/Section.tsx';
import { BLEEDS, fluidChoices, NO_FLUID, readNumber, readTold } from '../edits/duty.ts';

interface NowProps {
  readonly now: MeasuredNow;
}

export function DutySection({ now }: NowProps) {
  const { job, line, own, at } = now;
  return (
    <>
      <div class="setup-grid">
        <div class="setup-wide">
          <Pick
            label="Liquid"
            value={own.fluid ?? NO_FLUID}
            options={fluidChoices(job, catalogue)}
            onCommit={(id) =>
              set(`change the liquid of ${line.name}`, `${at}.fluid`, id === NO_FLUID ? undefined : id)
            }
          />
        </div>
        <Told now={now} of="pressure" label="Working pressure" hint="MPa, or with its unit: 4 bar, 60 psi" />
        <Told now={now} of="flow" label="Flow" hint="L/min, or with its unit: 2 gal/min" />
        <Pick
          label="It flows"
          value={own.duty?.toward ?? 'Z'}
          options={[
            { value: 'Z', label: 'to end Z' },
            { value: 'A', label: 'to end A' },
          ]}
          onCommit={(end) => set(`change where ${line.name} flows`, `${at}.duty.toward`, end)}
        />
      </div>
      <Temperatures now={now} />
      <Judged now={now} />
      <Bleeding now={now} />
    </>
  );
}

interface ToldProps extends NowProps {
  readonly of: 'pressure' | 'flow';
  readonly label: string;
  readonly hint: string;
}

function Told({ now: { line, own, at }, of, label, hint }: ToldProps) {
  const value = own.duty?.[of];
  return (
    <ReadInput
      label={label}
      shown={typeof value === 'number' ? writtenNumber(value) : value}
      placeholder="not given"
      hint={hint}
      optional
      read={readTold}
      onCommit={(told) => set(`change the ${of} of ${line.name}`, `${at}.duty.${of}`, told)}
    />
  );
}

const shown = (value: number | undefined): string | undefined =>
  value === undefined ? undefined : writtenNumber(value);

const TEMPERATURES = [
  ['fitted', 'When fitted', '20'],
  ['lowest', 'Coldest', 'not given'],
  ['highest', 'Hottest', 'not given'],
] as const;

function Temperatures({ now: { line, own, at } }: NowProps) {
  return (
    <Group name="Temperatures, °C">
      {TEMPERATURES.map(([key, label, placeholder]) => (
        <ReadInput
          key={key}
          label={label}
          shown={shown(own.duty?.temperature?.[key])}
          placeholder={placeholder}
          optional
          read={readNumber}
          onCommit={(value) =>
            set(`change a temperature of ${line.name}`, `${at}.duty.temperature.${key}`, value)
          }
        />
      ))}
    </Group>
  );
}

const JUDGED = [
  ['safetyFactor', 'Safety factor', 'strength over allowable stress'],
  ['wallTolerance', 'Wall the mill may leave out', 'as a part: 0.1 is a tenth'],
] as const;

function Judged({ now: { line, own, at } }: NowProps) {
  return (
    <Group name="For the estimates of pressure">
      {JUDGED.map(([key, label, hint]) => (
        <ReadInput
          key={key}
          label={label}
          shown={shown(own.duty?.[key])}
          placeholder={writtenNumber(line.duty[key].value)}
          hint={hint}
          optional
          read={readNumber}
          onCommit={(value) => set(`change how ${line.name} is estimated`, `${at}.duty.${key}`, value)}
        />
      ))}
    </Group>
  );
}

const REST = 'rest';

function Bleeding({ now: { line, own, at } }: NowProps) {
  return (
    <Group name="Air">
      <Pick
        label="Air leaves"
        hint={line.bleed ? 'air that stays is judged' : 'not bled: air is not judged'}
        value={own.bleed ? (own.bleed.to ?? 'both') : ''}
        options={BLEEDS}
        onCommit={(to) =>
          to === ''
            ? set(`bleed ${line.name} as its service says`, `${at}.bleed`, undefined)
            : set(`change where ${line.name} is bled`, `${at}.bleed.to`, to)
        }
      />
      {line.bleed && (
        <Pick
          label="Air is judged"
          value={own.bleed?.tilted ? 'tilted' : REST}
          options={[
            { value: REST, label: 'at rest' },
            { value: 'tilted', label: 'in every attitude' },
          ]}
          onCommit={(when) => set(`change how ${line.name} is bled`, `${at}.bleed.tilted`, when !== REST)}
        />
      )}
    </Group>
  );
}
