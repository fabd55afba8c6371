/** The pour test: a drop let go on the chosen line runs to where it stays or falls out. Tip the line, and it runs on. */
import { effect } from '@preact/signals';
import { pourIn, type Vec3, type WorkedLine } from 'runback';
import type { State } from './state.ts';
import type { Drop, Store } from './types.ts';

/** Of one run, whatever its length. */
const RUN_MS = 1500;
/** A drop picks up speed. */
const PACE = 1.6;
/** Less than this is no move, mm. */
const SAME_MM = 0.05;

export interface Clock {
  /** True where nothing should move on the screen. */
  still(): boolean;
  now(): number;
  /** Calls back before the next frame. */
  frame(run: () => void): void;
}

const pageClock: Clock = {
  still: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
  now: () => performance.now(),
  frame: (run) => {
    requestAnimationFrame(run);
  },
};

export type Pouring = Pick<Store, 'letGo' | 'takeDrop'>;
type Needs = Pick<State, 'line' | 'up' | 'bead' | 'stand' | 'pour'>;
/** Where a drop was let go, and where it is. */
type Falling = Pick<Drop, 'from' | 'at'>;
type Run = (line: WorkedLine, up: Vec3, drop: Falling) => void;

export function makePouring(state: Needs, clock: Clock = pageClock): Pouring {
  const { move, stop } = mover(clock, (drop) => {
    state.pour.value = drop;
  });
  const takeDrop = (): void => {
    stop();
    state.pour.value = null;
  };
  const run: Run = (line, up, { from, at }) => {
    const poured = pourIn(line, { up, at });
    if (poured) move(poured, from);
    else takeDrop();
  };
  let lay: Lay = { id: null, how: '' };
  effect(() => {
    const [line, up] = [state.line.value, state.up.value];
    const [before, drop] = [lay, state.pour.peek()];
    lay = layOf(line, up);
    if (drop === null || lay.how === before.how) return;
    const length = line?.centreline?.length;
    const gone = !drop.moving && drop.out !== null;
    if (!line || length === undefined || gone || lay.id !== before.id) takeDrop();
    else run(line, up, { from: drop.from, at: Math.min(drop.at, length) });
  });
  return { takeDrop, letGo: () => letGo(state, run) };
}

function letGo(state: Needs, run: Run): void {
  const [line, up] = [state.line.peek(), state.up.peek()];
  const length = line?.centreline?.length;
  if (!line || length === undefined) return;
  const at = Math.min(state.bead.peek() ?? length / 2, length);
  state.stand.value = at;
  run(line, up, { from: at, at });
}

interface Way {
  readonly from: number;
  readonly stops: number;
  readonly out: Drop['out'];
}

/** Shows a drop on its way, one at a time. */
function mover(clock: Clock, show: (drop: Drop) => void) {
  // Frames of a run that was given up do nothing.
  let runs = 0;
  const move = ({ from: begins, stops, out }: Way, from: number): void => {
    runs += 1;
    if (clock.still() || Math.abs(stops - begins) < SAME_MM) {
      show({ from, at: stops, out, moving: false });
      return;
    }
    const [run, began] = [runs, clock.now()];
    const step = (): void => {
      if (run !== runs) return;
      const part = Math.min(1, Math.max(0, clock.now() - began) / RUN_MS);
      show({ from, at: begins + (stops - begins) * part ** PACE, out, moving: part < 1 });
      if (part < 1) clock.frame(step);
    };
    step();
  };
  const stop = (): void => {
    runs += 1;
  };
  return { move, stop };
}

/** What decides where a drop runs. */
interface Lay {
  readonly id: string | null;
  readonly how: string;
}

/** A line that is only looked at again lies as it did. */
function layOf(worked: WorkedLine | null, up: Vec3): Lay {
  if (worked === null) return { id: null, how: '' };
  const { id, corners, tube, endA, endZ } = worked.line;
  const points = corners.map(({ at, radius }) => [at, radius]);
  return { id, how: JSON.stringify([id, up, points, tube.bore, endA.opening, endZ.opening]) };
}
