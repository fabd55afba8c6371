/** Benders of a job, their dies, how they spring back and how you stand at them. */
import type { JobEdit } from 'runback';
import type { WrittenLength } from '../../parts/read.ts';
import { idFrom } from './ids.ts';
import { entry, path, type Written, type WrittenBender, type WrittenDie } from './written.ts';

export type WrittenBench = NonNullable<WrittenBender['bench']>;

export interface NewDie {
  readonly od: WrittenLength;
  readonly radius: WrittenLength;
}

/** A new bender with one die: its id, and the edit. */
export function newBender(
  job: Written,
  name: string,
  die: NewDie,
): { readonly id: string; readonly edits: readonly JobEdit[] } {
  const id = idFrom(name, { taken: Object.keys(job.benders ?? {}), otherwise: 'bender' });
  return { id, edits: [{ path: path('benders', id), value: { name, dies: [die] } }] };
}

/** One more die at the end of the bender's list. */
export function newDie(job: Written, bender: string, die: NewDie): readonly JobEdit[] {
  const insert = entry(job.benders, bender)?.dies.length ?? 0;
  return [{ path: path('benders', bender, 'dies'), insert, value: die }];
}

/** Where the spring-back of a die for a tube stands, the nearest first. */
export interface Spring {
  readonly on: 'tube' | 'die' | 'bender';
  readonly at: string;
  readonly factor: number | undefined;
  readonly fixed: number | undefined;
}

export interface DieAt {
  readonly bender: string;
  /** Index of the die in the bender's list. */
  readonly die: number;
  readonly tube: string;
}

/** What the job says of the spring-back of this tube on this die; `null`: not calibrated. */
export function springOf(job: Written, { bender, die, tube }: DieAt): Spring | null {
  const holder = entry(job.benders, bender);
  const own = holder?.dies[die];
  const at = path('benders', bender, 'dies', die);
  const places = [
    ['tube', entry(own?.springBackByTube, tube), `${at}.${path('springBackByTube', tube)}`],
    ['die', own?.springBack, `${at}.springBack`],
    ['bender', holder?.springBack, path('benders', bender, 'springBack')],
  ] as const;
  const said = places.find(([, values]) => values !== undefined);
  if (!said) return null;
  const [on, values, where] = said;
  return { on, at: where, factor: values?.factor, fixed: values?.fixed };
}

/** The edits that set one of the two figures where they stand, or for this tube when nothing is calibrated yet. */
export function springEdits(
  job: Written,
  where: DieAt,
  change: readonly ['factor' | 'fixed', number | undefined],
): readonly JobEdit[] {
  const [key, value] = change;
  const said = springOf(job, where);
  if (said) {
    const other = said[key === 'factor' ? 'fixed' : 'factor'];
    return value === undefined && other === undefined
      ? uncalibrated(job, where)
      : [{ path: `${said.at}.${key}`, value }];
  }
  if (value === undefined) return [];
  const at = `${path('benders', where.bender, 'dies', where.die)}.${path('springBackByTube', where.tube)}`;
  return [{ path: at, value: { [key]: value } }];
}

/** Takes out the spring-back that holds for this tube on this die; what stands behind it holds then. */
export function uncalibrated(job: Written, where: DieAt): readonly JobEdit[] {
  const said = springOf(job, where);
  if (!said) return [];
  const die = entry(job.benders, where.bender)?.dies[where.die];
  const alone = said.on === 'tube' && Object.keys(die?.springBackByTube ?? {}).length === 1;
  const at = alone ? `${path('benders', where.bender, 'dies', where.die)}.springBackByTube` : said.at;
  return [{ path: at, value: undefined }];
}

/** How most people stand at a bench bender, to begin with. */
export const FIRST_BENCH: WrittenBench = {
  stand: 'side',
  startOn: 'left',
  plane: 'flat',
  former: 'far',
  moves: 'tube',
};

/** A tool that lies flat has its former nearer or farther than the tube, an upright one above or below it. */
export const FORMERS: Readonly<Record<WrittenBench['plane'], readonly WrittenBench['former'][]>> = {
  flat: ['far', 'near'],
  upright: ['above', 'below'],
};

/** The edits of one bench setting; the former follows the plane. */
export function benchEdits<K extends keyof WrittenBench>(
  bender: string,
  bench: WrittenBench,
  change: readonly [K, WrittenBench[K]],
): readonly JobEdit[] {
  const [key, value] = change;
  const at = path('benders', bender, 'bench');
  const edits: JobEdit[] = [{ path: `${at}.${key}`, value }];
  const formers = key === 'plane' ? FORMERS[value as WrittenBench['plane']] : null;
  if (formers && !formers.includes(bench.former)) edits.push({ path: `${at}.former`, value: formers[0] });
  return edits;
}

/** Dies of a bender with their places in its list. */
export const diesOf = (job: Written, bender: string): readonly (readonly [number, WrittenDie])[] =>
  entry(job.benders, bender)?.dies.map((die, i) => [i, die] as const) ?? [];
