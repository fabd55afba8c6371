/** The stick of a line or a run: what a new one is, and edits that keep it whole. */
import type { JobEdit, JobUnit, Vec3 } from 'runback';
import type { WrittenLength } from '../../parts/read.ts';
import type { Answer } from './fall.ts';
import { mmOf, roundOf, type WrittenMeasured, writtenOf } from './written.ts';

export type WrittenStick = NonNullable<WrittenMeasured['stick']>;
export type StickKind = WrittenStick['kind'];

/** A stick as it is written, where it stands in the job, and the units of the job. */
export interface StickPlace {
  readonly stick: WrittenStick;
  readonly at: string;
  readonly units: JobUnit;
}

export const KINDS: readonly { readonly value: StickKind; readonly label: string }[] = [
  { value: 'blade', label: 'flat blade' },
  { value: 'cable', label: 'round cable' },
  { value: 'links', label: 'stiff links, hinged' },
];

export const kindWords = (kind: StickKind): string =>
  KINDS.find(({ value }) => value === kind)?.label ?? kind;

/** Sizes to begin with, mm: a common blade, and a link and a pan that nobody takes for measured. */
const THICK = 0.5;
const WIDE = 6;
const LINK = 30;
const PAN: readonly [number, number] = [400, 200];
const HIGHER = 10;

export const newStick = (units: JobUnit): WrittenStick => ({
  kind: 'blade',
  enters: 'Z',
  thickness: writtenOf(THICK, units),
  width: writtenOf(WIDE, units),
});

/** Another kind, with the sizes it cannot be without and none that it does not have. */
export function kindEdits({ stick, at, units }: StickPlace, kind: StickKind): readonly JobEdit[] {
  const size = (key: 'width' | 'link', wanted: boolean, mm: number): readonly JobEdit[] =>
    wanted === (stick[key] !== undefined)
      ? []
      : [{ path: `${at}.${key}`, value: wanted ? writtenOf(mm, units) : undefined }];
  return [
    { path: `${at}.kind`, value: kind },
    ...size('width', kind !== 'cable', WIDE),
    ...size('link', kind === 'links', LINK),
  ];
}

export type TipKey = 'length' | 'thickness' | 'width';

/** A size of the stiff tip; its length taken out takes the tip out, and a new tip is as thick as the stick. */
export function tipEdit(
  { stick, at }: StickPlace,
  [key, value]: readonly [TipKey, WrittenLength | undefined],
): JobEdit {
  if (key !== 'width' && value === undefined) return { path: `${at}.tip`, value: undefined };
  if (stick.tip) return { path: `${at}.tip.${key}`, value };
  return { path: `${at}.tip`, value: { length: value, thickness: stick.thickness } };
}

/** "0.1 to 0.3", two figures with anything between them that is no figure; nothing typed: the usual range. */
export function readFriction(typed: string): Answer<readonly [number, number]> {
  const figures = typed.match(/\d+\.?\d*|\.\d+/gu)?.map(Number) ?? [];
  const [low, high = low] = figures;
  if (low === undefined || high === undefined || figures.length > 2 || /[-−]\s*[\d.]/u.test(typed))
    return { ok: false, message: 'not a friction', expected: 'lowest to highest, like 0.1 to 0.3' };
  return { ok: true, value: [low, high] };
}

/** A pan under this place, sizes to be measured. `under` in mm. */
export function newPan(under: Vec3, units: JobUnit): NonNullable<WrittenStick['pan']> {
  const round = (mm: number): WrittenLength => writtenOf(roundOf(mm, 'mm'), units);
  const [x, y, z] = under;
  return { middle: [round(x), round(y), round(z)], size: [round(PAN[0]), round(PAN[1])] };
}

type Fill = NonNullable<WrittenStick['fills']>[number];

/** One more fill: a litre more, standing a little higher; the first come as two, for one alone tells nothing. */
export function addFill({ stick, at, units }: StickPlace): JobEdit {
  const fills = stick.fills ?? [];
  const after = (fill: Fill | undefined): Fill => ({
    litres: (fill?.litres ?? 0) + 1,
    at: writtenOf((fill === undefined ? 0 : mmOf(fill.at, units)) + HIGHER, units),
  });
  const next = after(fills.at(-1));
  return fills.length === 0
    ? { path: `${at}.fills`, value: [next, after(next)] }
    : { path: `${at}.fills`, insert: fills.length, value: next };
}

const FEWEST_FILLS = 2;

/** Takes a fill away; two are the fewest there can be, so that one of two takes both. */
export const removeFill = ({ stick, at }: StickPlace, i: number): JobEdit => ({
  path: (stick.fills?.length ?? 0) > FEWEST_FILLS ? `${at}.fills[${i}]` : `${at}.fills`,
  value: undefined,
});

/** One more mark: at what the fills or the marks end with. */
export function addMark({ stick, at }: StickPlace): JobEdit {
  const marks = stick.levels ?? [];
  const litres = stick.fills?.at(-1)?.litres ?? (marks.at(-1)?.litres ?? 0) + 1;
  const names = ['MIN', 'MAX'].filter((name) => !marks.some((mark) => mark.name === name));
  const name = names[0] ?? `MARK ${marks.length + 1}`;
  return { path: `${at}.levels`, insert: marks.length, value: { name, litres } };
}
