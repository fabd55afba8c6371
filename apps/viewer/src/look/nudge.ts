/** Moves the selected corner by steps from the keyboard; steps that follow each other are one step of the history. */
import type { Vec3 } from 'runback';
import { store } from '../store/index.ts';

const REST_MS = 1200;
const FREE_STEP_MM = 1;

interface Run {
  readonly line: string;
  readonly index: number;
  readonly gesture: string;
  at: Vec3;
}

let run: Run | null = null;
let rest: ReturnType<typeof setTimeout> | undefined;
let count = 0;

/** `way`: steps along x, y and z of the job. */
export function nudge(way: Vec3): void {
  const [selection, worked] = [store.selection.value, store.line.value];
  if (selection?.kind !== 'point' || !worked) return;
  const corner = worked.line.corners[selection.index];
  if (!corner) return;
  const { id } = worked.line;
  if (run?.index !== selection.index || run.line !== id) {
    count += 1;
    run = { line: id, index: selection.index, gesture: `nudge ${count}`, at: corner.at };
  }
  const step = store.looks.value.snap || FREE_STEP_MM;
  const [x, y, z] = run.at;
  run.at = [x + way[0] * step, y + way[1] * step, z + way[2] * step];
  store.movePoint(run.index, run.at, run.gesture);
  clearTimeout(rest);
  rest = setTimeout(() => {
    run = null;
  }, REST_MS);
}
