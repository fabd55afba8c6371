/** Signs on the line: its ends, and flags where a check fails or notes. */
import type { Verdict } from 'runback';
import { curveY } from './curve.ts';
import { xOf } from './frame.ts';
import { label } from './measure.ts';
import { isChosen } from './pockets.ts';
import { spread } from './spread.ts';
import type { Box, EndTag, Flag, Frame, Label, Pocket, ProfileInput, Spot } from './types.ts';

/** Half the size of the signs, in parts of the lettering. */
export const END_RADIUS = 0.78;
export const FLAG_RADIUS = 0.62;

export function endsOf(
  frame: Frame,
  { worked }: ProfileInput,
  spots: readonly Spot[],
): { readonly ends: readonly EndTag[]; readonly labels: readonly Label[] } {
  const to = worked.line.drain?.to ?? null;
  const away = frame.size.text * END_RADIUS + 3;
  const { text } = frame.size;
  const tag = (name: EndTag['name'], x: number, y: number): EndTag => {
    const drop = to === 'both' || to === name ? { x, y: y + dropAway(frame, y) } : null;
    return { name, x, y, drop };
  };
  const ends = [tag('A', frame.left - away, spots[0]!.y), tag('Z', frame.right + away, spots.at(-1)!.y)];
  const labels = ends.map(({ name, x, y }) =>
    label({ key: `end-${name}`, text: name, x, y: y + text * 0.36, size: text, bold: true, ink: 'paper' }),
  );
  return { ends, labels };
}

/** From the tag of an end to its drop: under it, or over it where the rows below begin. */
function dropAway({ size, rows }: Frame, y: number): number {
  const away = size.text * (END_RADIUS + 0.85);
  return y + away + size.text * 0.4 > rows.plot.bottom ? size.text * 0.3 - away : away;
}

/** What the tag of an end and its drop cover. */
export const endBoxes = ({ size }: Frame, ends: readonly EndTag[]): readonly Box[] =>
  ends.map(({ x, y, drop }) => {
    const radius = size.text * END_RADIUS;
    const [top, bottom] = drop ? [Math.min(y, drop.y), Math.max(y, drop.y)] : [y, y];
    return { x: x - radius, y: top - radius, width: 2 * radius, height: bottom - top + 2 * radius };
  });

export const flagBoxes = ({ size }: Frame, flags: readonly Flag[]): readonly Box[] =>
  flags.map(({ x, y }) => {
    const radius = size.text * FLAG_RADIUS;
    return { x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius };
  });

/** Flags of the findings that fail or note at a place, along the foot of the plot. Those of one place share a flag;
 * what a drop or a bubble tells already has none. */
export function flagsOf(
  frame: Frame,
  input: ProfileInput,
  { spots, pockets }: { readonly spots: readonly Spot[]; readonly pockets: readonly Pocket[] },
): readonly Flag[] {
  const told = pockets.flatMap(({ findings }) => findings);
  const groups = grouped(input, told);
  const radius = frame.size.text * FLAG_RADIUS;
  const width = radius * 2;
  const wanted = groups.map(({ at }) => ({ centre: xOf(frame, at), width }));
  const room = { from: frame.left - 1, to: frame.right + 1, gap: 3 };
  const centres = spread(wanted, room) ?? wanted.map(({ centre }) => centre);
  return groups.map(({ at, findings, verdict }, i) => {
    const x = xOf(frame, at);
    return {
      x: centres[i]!,
      y: frame.rows.plot.bottom - radius + 1,
      verdict,
      foot: { x, y: curveY(spots, x) },
      findings,
      selected: isChosen(input, findings),
    };
  });
}

interface Group {
  readonly at: number;
  readonly verdict: Verdict;
  readonly findings: readonly number[];
}

/** Findings this near are told by one flag, in parts of the length. */
const TOGETHER = 0.004;

function grouped({ worked, profile: { length } }: ProfileInput, told: readonly number[]): readonly Group[] {
  const shown = worked.findings
    .map(({ at, verdict }, index) => ({ at, verdict, index }))
    .filter((one): one is { at: number; verdict: Verdict; index: number } => one.at !== null)
    .filter(({ verdict, index }) => verdict !== 'pass' && !told.includes(index))
    .sort((a, b) => a.at - b.at);
  const groups: Group[] = [];
  for (const { at, verdict, index } of shown) {
    const last = groups.at(-1);
    if (!last || at - last.at > length * TOGETHER) {
      groups.push({ at, verdict, findings: [index] });
      continue;
    }
    const worse = last.verdict === 'fail' || verdict === 'fail' ? 'fail' : 'note';
    groups[groups.length - 1] = { ...last, verdict: worse, findings: [...last.findings, index] };
  }
  return groups;
}
