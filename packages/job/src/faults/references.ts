/** Every id must be there once, and everything that names one must find it. */
import type { Segment } from '../path.ts';
import type { LooseMeasured } from '../schema/job.ts';
import { known, type Look, measuredOf, mirroredOf } from './look.ts';

export function lookAtReferences(look: Look): void {
  twice(look, 'surroundings');
  twice(look, 'lines');
  const materials = known.materials(look);
  for (const [id, tube] of Object.entries(look.job.tubes ?? {}))
    look.reference(['tubes', id, 'material'], tube?.material, materials);
  spring(look);
  look.job.lines?.forEach((line, i) => {
    const hand = mirroredOf(line);
    const own = measuredOf(line);
    if (hand) mirror(look, hand.mirrorOf, i);
    if (own) measured(look, own, i);
    if (line?.clearance?.to !== undefined) clearances(look, line.clearance.to, i);
  });
}

function twice(look: Look, list: 'surroundings' | 'lines'): void {
  const seen = new Set<string>();
  look.job[list]?.forEach((item, i) => {
    if (item?.id === undefined) return;
    if (seen.has(item.id))
      look.fault([list, i, 'id'], 'this id is taken by one before it', 'an id of its own');
    seen.add(item.id);
  });
}

function spring(look: Look): void {
  const tubes = { ...known.tubes(look), on: 'key' } as const;
  for (const [id, bender] of Object.entries(look.job.benders ?? {}))
    bender?.dies?.forEach((die, i) => {
      for (const tube of Object.keys(die?.springBackByTube ?? {}))
        look.reference(['benders', id, 'dies', i, 'springBackByTube', tube], tube, tubes);
    });
}

function measured(look: Look, line: LooseMeasured, i: number): void {
  const at = (key: string): readonly Segment[] => ['lines', i, key];
  look.reference(at('tube'), line.tube, known.tubes(look));
  look.reference(at('bender'), line.bender, known.benders(look));
  look.reference(at('service'), line.service, known.services(look));
  look.reference(at('fluid'), line.fluid, known.fluids(look));
  look.reference([...at('drain'), 'rule'], line.drain?.rule, known.drainRules(look));
  end(look, line.endA, at('endA'));
  end(look, line.endZ, at('endZ'));
}

function end(look: Look, values: LooseMeasured['endA'], at: readonly Segment[]): void {
  look.reference([...at, 'fitting'], values?.fitting, known.fittings(look));
  const surroundings = known.surroundings(look);
  values?.joins?.forEach((id, i) => {
    look.reference([...at, 'joins', i], id, surroundings);
  });
}

function clearances(look: Look, to: object, i: number): void {
  const surroundings = { ...known.surroundings(look), on: 'key' } as const;
  for (const id of Object.keys(to)) look.reference(['lines', i, 'clearance', 'to', id], id, surroundings);
}

function mirror(look: Look, of: string | undefined, i: number): void {
  const at = ['lines', i, 'mirrorOf'];
  const self = look.job.lines?.[i];
  const target = look.job.lines?.find((line) => line?.id === of);
  if (of !== undefined && of === self?.id)
    look.fault(at, 'a line cannot be the opposite hand of itself', 'the id of another line');
  else if (mirroredOf(target))
    look.fault(at, 'this is itself the opposite hand of a line', 'the id of a line with points');
  else look.reference(at, of, known.lines(look));
}
