/** Fields that are only here: whole numbers, plain factors, falls, directions, and lengths with a figure behind them. */
import { formatDegrees, formatLength, type JobUnit } from 'runback';
import { store } from '../../../store/index.ts';
import { type Committed, LengthInput, Pick, TextInput, type WrittenLength } from '../../parts/index.ts';
import { writtenNumber } from '../../parts/read.ts';
import { type Answer, FALLS, readFall, sayFall, type WrittenFall } from '../edits/fall.ts';
import type { Figure } from '../edits/say.ts';
import { sourceOf } from '../edits/say.ts';
import { Reset } from './Act.tsx';
import { refused } from './now.ts';

export interface ReadInputProps<T> {
  readonly label: string;
  readonly shown: string | undefined;
  readonly hint?: string | undefined;
  readonly placeholder?: string | undefined;
  readonly optional?: boolean;
  readonly read: (typed: string) => Answer<T>;
  readonly onCommit: (value: T | undefined) => Committed;
}

/** A text that is read as something else. */
export function ReadInput<T>({ shown, hint, placeholder, read, onCommit, ...rest }: ReadInputProps<T>) {
  const commit = (typed: string | undefined): Committed => {
    if (typed === undefined) return onCommit(undefined);
    const answer = read(typed);
    return answer.ok ? onCommit(answer.value) : refused(answer.message, answer.expected);
  };
  const texts = { ...(hint !== undefined && { hint }), ...(placeholder !== undefined && { placeholder }) };
  return <TextInput {...rest} {...texts} value={shown} onCommit={commit} />;
}

const MOST_PIECES = 10_000;

export function readWhole(typed: string): Answer<number> {
  const value = Number(typed);
  const whole = /^\d+$/u.test(typed) && value >= 1 && value <= MOST_PIECES;
  return whole
    ? { ok: true, value }
    : { ok: false, message: 'not a number of pieces', expected: `a whole number from 1 to ${MOST_PIECES}` };
}

export function readFactor(typed: string): Answer<number> {
  const value = Number(typed);
  return /^\+?(?:\d+\.?\d*|\.\d+)$/u.test(typed) && value > 0
    ? { ok: true, value }
    : { ok: false, message: 'not a factor', expected: 'a number like 1.03, more than 0' };
}

/** What takes the place of a figure that is taken out. */
const says = (elsewhere: 'job' | 'catalogue'): string => `↺ as the ${elsewhere} says`;

export interface FiguredProps {
  readonly label: string;
  /** What holds now. */
  readonly figure: Figure;
  /** What would hold without what is written here comes from there; default the catalogue. */
  readonly elsewhere?: 'job' | 'catalogue';
}

export interface FigureInputProps extends FiguredProps {
  /** As written here; undefined: left out, and `figure` is from elsewhere. */
  readonly value: WrittenLength | undefined;
  readonly units: JobUnit;
  readonly onCommit: (value: WrittenLength | undefined) => Committed;
}

/** A length that has a figure behind it when it is left out. */
export function FigureInput({ figure, value, elsewhere = 'catalogue', onCommit, ...rest }: FigureInputProps) {
  const out = value === undefined;
  const shown = out && {
    placeholder: formatLength(figure.value, store.style.value),
    hint: sourceOf(figure),
  };
  return (
    <div class="setup-figure">
      <LengthInput {...rest} {...shown} value={value} sign="not negative" optional onCommit={onCommit} />
      {!out && <Reset of={rest.label} says={says(elsewhere)} onAct={() => onCommit(undefined)} />}
    </div>
  );
}

export interface FallInputProps extends FiguredProps {
  /** As written: degrees, or a fall as text. */
  readonly value: WrittenFall | undefined;
  readonly onCommit: (fall: WrittenFall | undefined) => Committed;
}

const OWN = '';

/** A least fall: typed as degrees, "1 in 12" or "2 %", or chosen. */
export function FallInput({ label, figure, value, elsewhere = 'catalogue', onCommit }: FallInputProps) {
  const out = value === undefined;
  const behind = Number(formatDegrees(figure.value, 4));
  const fall = sayFall(behind);
  const hint = out ? sourceOf(figure) : typeof value === 'string' ? `${writtenNumber(behind)}°` : fall;
  const choices = FALLS.map((choice) => ({ value: String(choice.fall), label: choice.label }));
  const chosen = choices.find((choice) => choice.value === String(value))?.value ?? OWN;
  const choose = (choice: string): Committed =>
    choice === OWN ? undefined : onCommit(FALLS.find((one) => String(one.fall) === choice)?.fall);
  return (
    <div class="setup-figure setup-wide">
      <div class="setup-pair">
        <ReadInput
          label={label}
          shown={out ? undefined : sayWritten(value)}
          placeholder={`${writtenNumber(behind)}°${fall === '' ? '' : ` (${fall})`}`}
          hint={hint === '' ? undefined : hint}
          read={readFall}
          onCommit={onCommit}
        />
        <Pick
          key={`${chosen} ${String(value)}`}
          label="or choose"
          value={chosen}
          options={[{ value: OWN, label: 'a fall …' }, ...choices]}
          onCommit={choose}
        />
      </div>
      {!out && <Reset of={label} says={says(elsewhere)} onAct={() => onCommit(undefined)} />}
    </div>
  );
}

const sayWritten = (fall: WrittenFall): string =>
  typeof fall === 'string' ? fall : `${writtenNumber(fall)}°`;

export interface PointInputProps {
  /** What the point is. */
  readonly name: string;
  readonly value: readonly WrittenLength[];
  readonly units: JobUnit;
  readonly sign?: 'more than 0';
  readonly onCommit: (axis: 0 | 1 | 2, value: WrittenLength) => Committed;
}

const AXES = ['x', 'y', 'z'] as const;

/** Three lengths beside each other. */
export function PointInput({ name, value, units, sign, onCommit }: PointInputProps) {
  return (
    <fieldset class="setup-point">
      <legend>{name}</legend>
      {AXES.map((axis, k) => (
        <LengthInput
          key={axis}
          label={axis}
          value={value[k]}
          units={units}
          {...(sign && { sign })}
          onCommit={(typed) => (typed === undefined ? undefined : onCommit(k as 0 | 1 | 2, typed))}
        />
      ))}
    </fieldset>
  );
}
