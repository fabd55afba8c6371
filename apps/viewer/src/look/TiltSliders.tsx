import { useId } from 'preact/hooks';
import { store, type Tilt } from '../store/index.ts';
import { fullestTilt, pitchWords, rollWords, tiltRange, worstTilt } from './words.ts';

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

/** Without what the change of unit leaves at the last places, which would take the last step away. */
const inDegrees = (angle: number): number => Number((angle / DEGREE).toFixed(6));

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
        min={inDegrees(low)}
        max={inDegrees(high)}
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
  const jumps: readonly (readonly [string, Tilt | null])[] = [
    ['Level', { pitch: 0, roll: 0 }],
    ['Worst attitude', worstTilt(line)],
    ['Most liquid stays', fullestTilt(line)],
  ];
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
        {jumps.map(
          ([words, to]) =>
            to && (
              <button
                key={words}
                type="button"
                class="btn"
                disabled={same(tilt, to)}
                onClick={() => store.setTilt(to)}
              >
                {words}
              </button>
            ),
        )}
      </div>
    </div>
  );
}
