import { useId } from 'preact/hooks';
import { store, type Tilt } from '../store/index.ts';
import { pitchWords, rollWords, tiltRange, worstTilt } from './words.ts';

const DEGREE = Math.PI / 180;
/** Of a slider, degrees. */
const STEP_DEG = 0.1;

interface SliderProps {
  readonly label: string;
  readonly value: number;
  readonly range: readonly [number, number];
  readonly words: string;
  readonly onMove: (angle: number) => void;
}

/** A slider over whole steps of a degree; its ends are exactly those of the range. */
function Slider({ label, value, range: [low, high], words, onMove }: SliderProps) {
  const id = useId();
  return (
    <div class="look-slider">
      <label for={id}>{label}</label>
      <span class="mono">{words}</span>
      <input
        id={id}
        type="range"
        min={low / DEGREE}
        max={high / DEGREE}
        step={STEP_DEG}
        value={value / DEGREE}
        aria-valuetext={words}
        onInput={({ currentTarget }) => onMove(Number(currentTarget.value) * DEGREE)}
      />
    </div>
  );
}

const same = (a: Tilt, b: Tilt): boolean => a.pitch === b.pitch && a.roll === b.roll;

export function TiltSliders() {
  const line = store.line.value;
  if (!line) return null;
  const tilt = store.tilt.value;
  const range = tiltRange(line.line.attitudes, tilt);
  const worst = worstTilt(line);
  const level: Tilt = { pitch: 0, roll: 0 };
  return (
    <div class="look-tilt">
      <Slider
        label="Pitch"
        value={tilt.pitch}
        range={range.pitch}
        words={pitchWords(tilt.pitch)}
        onMove={(pitch) => store.setTilt({ ...tilt, pitch })}
      />
      <Slider
        label="Roll"
        value={tilt.roll}
        range={range.roll}
        words={rollWords(tilt.roll)}
        onMove={(roll) => store.setTilt({ ...tilt, roll })}
      />
      <div class="look-row">
        <button type="button" class="btn" disabled={same(tilt, level)} onClick={() => store.setTilt(level)}>
          Level
        </button>
        {worst && (
          <button type="button" class="btn" disabled={same(tilt, worst)} onClick={() => store.setTilt(worst)}>
            Worst attitude
          </button>
        )}
      </div>
    </div>
  );
}
