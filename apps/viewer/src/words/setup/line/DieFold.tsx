/** One die of a bender: its sizes, what it needs of the tube, and how the tube springs back on it. */
import { AngleInput, type Committed, LengthInput, TextInput, written } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { ReadInput, readFactor } from '../bits/inputs.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { Group, Section } from '../bits/Section.tsx';
import { type DieAt, type Spring, springEdits, springOf, uncalibrated } from '../edits/benders.ts';
import { entry, path, type WrittenBender } from '../edits/written.ts';

interface DieProps {
  readonly now: MeasuredNow;
  readonly bender: string;
  readonly index: number;
}

export function DieFold({ now, bender, index }: DieProps) {
  const { job, own, line } = now;
  const die = entry(job.benders, bender)?.dies[index];
  if (!die) return null;
  const fits = line.corners.some((corner) => corner.die?.path === path('benders', bender, 'dies', index));
  const spring = springOf(job, { bender, die: index, tube: own.tube });
  const brief = [fits ? 'bends this line' : '', spring ? 'calibrated' : 'not calibrated'];
  return (
    <Section
      inner
      id={`die ${bender} ${index}`}
      title={`Die R ${written(die.radius)} for ${written(die.od)}`}
      brief={brief.filter((part) => part !== '').join(', ')}
    >
      <DieSizes now={now} bender={bender} index={index} />
      <SpringGroup now={now} bender={bender} index={index} spring={spring} />
      <Act
        look="btn-quiet"
        label="Remove this die"
        onAct={() => set(`remove a die of ${bender}`, path('benders', bender, 'dies', index), undefined)}
      />
    </Section>
  );
}

/** Keys of a die that are lengths, as people say them. */
const SIZES = [
  ['radius', 'Centreline radius', 'more than 0', undefined],
  ['od', 'For tube diameter', 'more than 0', undefined],
  ['minStraight', 'Straight between', 'not negative', 'not judged'],
  ['minTail', 'Tail to first bend', 'not negative', 'not judged'],
] as const;

/** Keys that may stand on the bender too. */
const HABITS = [
  ['stretchPerDegree', 'Stretch per degree'],
  ['markOffset', 'Mark before bend'],
] as const;

function DieSizes({ now: { job, units }, bender, index }: DieProps) {
  const holder = entry(job.benders, bender);
  const die = holder?.dies[index];
  const at = path('benders', bender, 'dies', index);
  const put =
    (key: string, what: string) =>
    (value: unknown): Committed =>
      set(`change the ${what} of a die`, `${at}.${key}`, value);
  return (
    <div class="setup-grid">
      {SIZES.map(([key, label, sign, left]) => (
        <LengthInput
          key={key}
          label={label}
          value={die?.[key]}
          units={units}
          sign={sign}
          {...(left && { optional: true, placeholder: left })}
          onCommit={put(key, label.toLowerCase())}
        />
      ))}
      <AngleInput
        label="Greatest dial angle"
        value={die?.maxAngle}
        lowest={0}
        highest={360}
        optional
        placeholder="not judged"
        onCommit={put('maxAngle', 'greatest angle')}
      />
      {HABITS.map(([key, label]) => (
        <LengthInput
          key={key}
          label={label}
          value={die?.[key]}
          units={units}
          optional
          placeholder={habitOf(holder, key)}
          onCommit={put(key, label.toLowerCase())}
        />
      ))}
      <div class="setup-wide">
        <TextInput label="Note on this die" value={die?.note} longest={2000} onCommit={put('note', 'note')} />
      </div>
    </div>
  );
}

/** What the bender says when its die does not. */
const habitOf = (bender: WrittenBender | undefined, key: (typeof HABITS)[number][0]): string =>
  bender?.[key] === undefined ? '0' : `${written(bender[key])}, as the bender`;

interface SpringProps extends DieProps {
  readonly spring: Spring | null;
}

function SpringGroup({ now: { job, own }, bender, index, spring }: SpringProps) {
  const where: DieAt = { bender, die: index, tube: own.tube };
  const put = (key: 'factor' | 'fixed', value: number | undefined): Committed =>
    change('change the spring-back', ...springEdits(job, where, [key, value]));
  return (
    <Group name="Spring-back">
      <ReadInput
        label="Factor"
        shown={spring?.factor === undefined ? undefined : String(spring.factor)}
        placeholder={spring ? '1' : 'not calibrated'}
        read={readFactor}
        onCommit={(factor) => put('factor', factor)}
      />
      <AngleInput
        label="Fixed, degrees"
        value={spring?.fixed}
        lowest={-90}
        highest={90}
        optional
        placeholder={spring ? '0' : 'not calibrated'}
        onCommit={(fixed) => put('fixed', fixed)}
      />
      <div class="setup-wide setup-row">
        <span class="field-hint">{sayWhere(spring, own.tube)}</span>
        {spring && (
          <Act
            look="btn-quiet"
            label="Make it not calibrated"
            onAct={() => change('take out a spring-back', ...uncalibrated(job, where))}
          />
        )}
      </div>
    </Group>
  );
}

function sayWhere(spring: Spring | null, tube: string): string {
  if (!spring)
    return `Dial = factor × bend + fixed. Bend an offcut of ${tube} at two angles and measure what it gave.`;
  if (spring.on === 'tube') return `Dial = factor × bend + fixed, for tube ${tube} on this die.`;
  return spring.on === 'die'
    ? 'Dial = factor × bend + fixed, for every tube on this die.'
    : 'Dial = factor × bend + fixed, for every die of this bender without one of its own.';
}
