/** What a stick is made of, as far as it has to fit. */
import type { Blade } from '@runback/bending';
import { tipPassage } from '@runback/bending';
import type { Stick } from '@runback/job';
import type { Way } from './way.ts';

/** A part of a stick. `width` is `null` when it is round. */
export interface Section {
  readonly name: 'blade' | 'cable' | 'link' | 'tip';
  readonly thickness: number;
  readonly width: number | null;
}

/** A part that does not bend. */
export interface Stiff extends Section {
  readonly length: number;
}

const BODY = { blade: 'blade', cable: 'cable', links: 'link' } as const;

/** The thin way first, whichever way round the job has it. */
const lying = (thickness: number, width: number | null): Pick<Section, 'thickness' | 'width'> =>
  width === null
    ? { thickness, width }
    : { thickness: Math.min(thickness, width), width: Math.max(thickness, width) };

export const bodyOf = (stick: Stick): Section => ({
  name: BODY[stick.kind],
  ...lying(stick.thickness, stick.width),
});

/** All of it that has to go in. */
export const sectionsOf = (stick: Stick): readonly Section[] => [
  bodyOf(stick),
  ...stiffsOf(stick).filter(({ name }) => name === 'tip'),
];

/** Its stiff parts: the tip, and the links of a segmented one. */
export function stiffsOf({ kind, tip, link, ...stick }: Stick): readonly Stiff[] {
  const tips = tip ? [{ name: 'tip' as const, length: tip.length, ...lying(tip.thickness, tip.width) }] : [];
  if (kind !== 'links' || link === null) return tips;
  return [...tips, { name: 'link', length: link, ...lying(stick.thickness, stick.width) }];
}

/** The stiff part that has the least to spare in the bends of a way, or the longest; `null` when all of it bends. */
export function tightestStiff(way: Way, stick: Stick): Stiff | null {
  const margin = (stiff: Stiff): number =>
    Math.min(...tipPassage(way.run, sizes(stiff)).map(({ longest }) => longest)) - stiff.length;
  const all = stiffsOf(stick).map((stiff) => ({ stiff, margin: margin(stiff) }));
  return all.sort((a, b) => a.margin - b.margin || b.stiff.length - a.stiff.length)[0]?.stiff ?? null;
}

/** As `tipPassage` wants it: the thin way in the plane of the bend. */
export const sizes = ({ thickness, width }: Section) =>
  width === null ? { thickness } : { thickness, width };

/** The largest distance across it. */
export const across = ({ thickness, width }: Section): number => Math.hypot(thickness, width ?? 0);

/** The blade with its metal; `null` when it is none, or its metal is not known. */
export function bladeOf(stick: Stick): Blade | null {
  const { thickness, width } = bodyOf(stick);
  const [youngs, limit] = [stick.material?.youngs ?? null, stick.material?.yield ?? null];
  if (stick.kind !== 'blade' || width === null || youngs === null || limit === null) return null;
  return { thickness, width, youngsMPa: youngs.value, yieldMPa: limit.value };
}
