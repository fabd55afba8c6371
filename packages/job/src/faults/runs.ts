/** Runs and sticks: what goes through which lines, and whether enough is said of it. */
import type { Segment } from '../path.ts';
import type { Loose, LooseJob, RunValues, StickValues } from '../schema/job.ts';
import { known, type Look, measuredOf } from './look.ts';

type LooseStick = Loose<StickValues>;
type LooseRun = Loose<RunValues>;

export function lookAtRuns(look: Look): void {
  look.job.lines?.forEach((line, i) => {
    stick(look, measuredOf(line)?.stick, ['lines', i, 'stick']);
  });
  look.job.runs?.forEach((run, i) => {
    if (!run) return;
    ownId(look, look.job, i);
    linesOf(look, run, i);
    stick(look, run.stick, ['runs', i, 'stick']);
  });
}

/** A run and a line are looked up in one list of findings: they cannot share an id. */
function ownId(look: Look, { lines, runs }: LooseJob, i: number): void {
  const id = runs?.[i]?.id;
  if (id === undefined) return;
  const at = ['runs', i, 'id'];
  if (runs?.slice(0, i).some((run) => run?.id === id))
    look.fault(at, 'this id is taken by one before it', 'an id of its own');
  else if (lines?.some((line) => line?.id === id))
    look.fault(at, 'this id is taken by a line', 'an id of its own');
}

function linesOf(look: Look, { lines }: LooseRun, i: number): void {
  lines?.forEach((id, k) => {
    const at = ['runs', i, 'lines', k];
    if (id !== undefined && lines.indexOf(id) < k)
      look.fault(at, 'this line is in the run already', 'each line once');
    else look.reference(at, id, known.lines(look));
  });
}

function stick(look: Look, values: LooseStick | undefined, at: readonly Segment[]): void {
  if (!values) return;
  look.reference([...at, 'material'], values.material, known.materials(look));
  if (values.kind !== undefined && values.kind !== 'cable') wanted(look, values.kind, [...at, 'width']);
  if (values.kind === 'links') wanted(look, 'links', [...at, 'link']);
  const { friction } = values;
  if (friction && friction[0] > friction[1])
    look.fault([...at, 'friction'], 'the lower friction comes first', '[lowest, highest]');
  growing(look, values.fills, [...at, 'fills']);
}

const WANTED = { width: 'width of the', link: 'length of one of the' } as const;

function wanted(look: Look, kind: 'blade' | 'links', at: readonly Segment[]): void {
  if (look.written(at) !== undefined) return;
  const key = at.at(-1) === 'link' ? 'link' : 'width';
  look.fault(at, 'this key is missing', `the ${WANTED[key]} ${kind}`);
}

/** More liquid stands higher: without that no mark can be read between two fills. */
function growing(look: Look, fills: LooseStick['fills'], at: readonly Segment[]): void {
  fills?.forEach((fill, i) => {
    const before = fills[i - 1];
    for (const key of ['litres', 'at'] as const) {
      const [low, high] = [before?.[key], fill?.[key]];
      if (low !== undefined && high !== undefined && high <= low)
        look.fault([...at, i, key], FILLS[key], 'more than in the fill before it');
    }
  });
}

const FILLS = {
  litres: 'fills go from the least to the most',
  at: 'more liquid must stand higher on the stick',
} as const;
