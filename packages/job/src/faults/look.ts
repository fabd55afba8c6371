/** What the looks at a job share: the job, what is known besides it, and how a fault is reported. */
import type { Catalogue } from '../catalogue-types.ts';
import { GENERAL_SERVICE, PLAIN_FITTING } from '../defaults.ts';
import { describe, type Fault } from '../issue.ts';
import { didYouMean, oneOf } from '../near.ts';
import type { Segment } from '../path.ts';
import type { LooseJob, LooseMeasured, LooseMirrored } from '../schema/job.ts';
import { valueAt } from '../schema/words.ts';

export class Look {
  readonly job: LooseJob;
  readonly catalogue: Catalogue;
  readonly faults: Fault[] = [];
  readonly #data: unknown;

  /** `data` is the job as written, to say what was found. */
  constructor(job: LooseJob, catalogue: Catalogue, data: unknown) {
    this.job = job;
    this.catalogue = catalogue;
    this.#data = data;
  }

  /** The value at a path as written. */
  written(at: readonly Segment[]): unknown {
    return valueAt(this.#data, at);
  }

  /** Reports a fault at a path; what was found is what is written there, unless `says` tells it better. */
  fault(at: readonly Segment[], message: string, says: string | Says): void {
    const {
      expected,
      on = 'value',
      got = describe(this.written(at)),
    } = typeof says === 'string' ? { expected: says } : says;
    this.faults.push({ at, on, message, expected, got });
  }

  /** A fault when `id` is not among `known`. */
  reference(at: readonly Segment[], id: string | undefined, known: Known): void {
    if (id === undefined || known.ids.includes(id)) return;
    const message = `there is no ${known.what} of this id${didYouMean(id, known.ids)}`;
    this.fault(at, message, { expected: oneOf(known.ids), on: known.on ?? 'value', got: describe(id) });
  }
}

interface Says {
  readonly expected: string;
  readonly on?: Fault['on'];
  readonly got?: string;
}

export interface Known {
  /** Where the id stands: `key` when it is one. */
  readonly on?: Fault['on'];
  readonly what: string;
  readonly ids: readonly string[];
}

type LooseLine = LooseMeasured | LooseMirrored | undefined;

/** The line when it has points of its own. */
export const measuredOf = (line: LooseLine): LooseMeasured | null =>
  line === undefined || 'mirrorOf' in line ? null : (line as LooseMeasured);

/** The line when it is the opposite hand of another. */
export const mirroredOf = (line: LooseLine): LooseMirrored | null =>
  line !== undefined && 'mirrorOf' in line ? (line as LooseMirrored) : null;

/** Ids are taken from the job as written: a faulty tube is still the tube that was meant. */
const entries = (look: Look, table: string): readonly string[] => {
  const written = look.written([table]);
  return typeof written === 'object' && written !== null && !Array.isArray(written)
    ? Object.keys(written)
    : [];
};

const ids = (look: Look, list: string): readonly string[] => {
  const written = look.written([list]);
  if (!Array.isArray(written)) return [];
  return written.map((_, i) => look.written([list, i, 'id'])).filter((id) => typeof id === 'string');
};

const all = (...groups: readonly (readonly string[])[]): readonly string[] => [...new Set(groups.flat())];
const named = Object.keys;

export const known = {
  tubes: (look: Look): Known => ({
    what: 'tube',
    ids: all(entries(look, 'tubes'), named(look.catalogue.tubes)),
  }),
  benders: (look: Look): Known => ({ what: 'bender', ids: entries(look, 'benders') }),
  materials: (look: Look): Known => ({
    what: 'material',
    ids: all(entries(look, 'materials'), named(look.catalogue.materials)),
  }),
  fittings: (look: Look): Known => ({
    what: 'end fitting',
    ids: all(entries(look, 'fittings'), named(look.catalogue.fittings), [PLAIN_FITTING]),
  }),
  services: (look: Look): Known => ({
    what: 'service',
    ids: all(entries(look, 'services'), named(look.catalogue.services), [GENERAL_SERVICE]),
  }),
  fluids: (look: Look): Known => ({
    what: 'fluid',
    ids: all(entries(look, 'fluids'), named(look.catalogue.fluids)),
  }),
  drainRules: (look: Look): Known => ({ what: 'drain rule', ids: named(look.catalogue.drainRules) }),
  surroundings: (look: Look): Known => ({ what: 'surrounding', ids: ids(look, 'surroundings') }),
  lines: (look: Look): Known => ({ what: 'line', ids: ids(look, 'lines') }),
};
