/** Tubes, benders, attitudes, axes and the job's own figures: what the schema alone cannot say. */
import { RADIUS_MM, type Vec3 } from '@runback/geometry';
import type { Segment } from '../path.ts';
import { axesOf } from '../resolve/axes.ts';
import { directionOf } from '../resolve/solid.ts';
import type { LooseMeasured } from '../schema/job.ts';
import { type Look, measuredOf } from './look.ts';

export function lookAtShop(look: Look): void {
  tubes(look);
  benders(look);
  axes(look);
  attitudes(look, look.job.attitudes, ['attitudes']);
  look.job.lines?.forEach((line, i) => {
    const own = measuredOf(line);
    if (!own) return;
    attitudes(look, own.attitudes, ['lines', i, 'attitudes']);
    oneFall(look, i);
    temperature(look, own.duty?.temperature, ['lines', i, 'duty', 'temperature']);
    for (const end of ['endA', 'endZ'] as const)
      direction(look, own[end]?.direction, ['lines', i, end, 'direction']);
  });
  fittings(look);
}

function tubes(look: Look): void {
  for (const [id, tube] of Object.entries(look.job.tubes ?? {})) {
    const { od, wall } = tube ?? {};
    if (od === undefined || wall === undefined || od - 2 * wall > RADIUS_MM) continue;
    look.fault(['tubes', id, 'od'], 'this tube has no bore', 'more than twice the wall');
  }
}

type Spring = { readonly factor?: number | undefined; readonly fixed?: number | undefined } | undefined;

function benders(look: Look): void {
  const spring = (values: Spring, at: readonly Segment[]): void => {
    const empty = values !== undefined && look.written([...at, 'factor']) === undefined;
    if (empty && look.written([...at, 'fixed']) === undefined)
      look.fault(at, 'this spring-back says nothing', '"factor", "fixed" or both');
  };
  for (const [id, bender] of Object.entries(look.job.benders ?? {})) {
    spring(bender?.springBack, ['benders', id, 'springBack']);
    stance(look, id, bender?.bench);
    bender?.dies?.forEach((die, i) => {
      const at = ['benders', id, 'dies', i];
      spring(die?.springBack, [...at, 'springBack']);
      for (const [tube, values] of Object.entries(die?.springBackByTube ?? {}))
        spring(values, [...at, 'springBackByTube', tube]);
    });
  }
}

type LooseBench = NonNullable<NonNullable<Look['job']['benders']>[string]>['bench'];

/** A flat tool has its former nearer or farther than the tube, an upright one above or below it. */
function stance(look: Look, id: string, bench: LooseBench): void {
  const { plane, former } = bench ?? {};
  if (plane === undefined || former === undefined) return;
  const beside = former === 'near' || former === 'far';
  if (beside === (plane === 'flat')) return;
  look.fault(
    ['benders', id, 'bench', 'former'],
    `the former of ${plane === 'flat' ? 'a flat' : 'an upright'} tool cannot be there`,
    plane === 'flat' ? '"near" or "far"' : '"above" or "below"',
  );
}

function axes(look: Look): void {
  const { up, forward } = look.job;
  const read = axesOf(up, forward);
  if (read === 'up' || read === 'forward')
    look.fault([read], 'this direction points nowhere', 'a direction, not [0, 0, 0]');
  if (read === 'parallel')
    look.fault(
      [forward === undefined ? 'up' : 'forward'],
      'forward and up are parallel',
      'two directions that differ',
    );
}

function direction(look: Look, value: Vec3 | undefined, at: readonly Segment[]): void {
  if (value === undefined || directionOf(value) !== null) return;
  look.fault(at, 'this direction points nowhere', 'a direction out of the port into the line');
}

type LooseAttitudes = Look['job']['attitudes'];

function attitudes(look: Look, values: LooseAttitudes, at: readonly Segment[]): void {
  if (values?.tilt !== undefined && (values.pitch !== undefined || values.roll !== undefined))
    look.fault(
      [...at, 'tilt'],
      'tilt cannot stand together with pitch or roll',
      'either "tilt", or "pitch" and "roll"',
    );
  for (const key of ['pitch', 'roll'] as const) {
    const range = values?.[key];
    if (range && range[0] > range[1])
      look.fault([...at, key], 'the lower angle comes first', '[lowest, highest]');
  }
}

function oneFall(look: Look, i: number): void {
  const at = ['lines', i, 'drain'];
  const [rule, least] = [look.written([...at, 'rule']), look.written([...at, 'minSlope'])];
  if (rule === undefined || least === undefined) return;
  look.fault(
    [...at, 'rule'],
    'a rule cannot stand together with minSlope',
    'either "rule", or "minSlope" as you want it',
  );
}

type LooseTemperature = NonNullable<NonNullable<LooseMeasured['duty']>['temperature']>;

function temperature(look: Look, values: LooseTemperature | undefined, at: readonly Segment[]): void {
  const { lowest, highest } = values ?? {};
  if (lowest === undefined || highest === undefined || lowest <= highest) return;
  look.fault([...at, 'highest'], 'this is colder than the lowest', 'at least the lowest temperature');
}

function fittings(look: Look): void {
  for (const id of Object.keys(look.job.fittings ?? {})) {
    const known =
      Object.hasOwn(look.catalogue.fittings, id) || look.written(['fittings', id, 'uses']) !== undefined;
    if (!known)
      look.fault(
        ['fittings', id, 'uses'],
        'this key is missing',
        'the length of tube that forming this end uses up',
      );
  }
}
