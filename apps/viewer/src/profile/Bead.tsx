/** The bead on the line and its read-out. Alone, so that moving it draws nothing else anew. */

import { store } from '../store/index.ts';
import { curveY } from './curve.ts';
import { xOf } from './frame.ts';
import { tidy } from './measure.ts';
import { PART_GAP, readOut } from './read-out.ts';
import { drop } from './Signs.tsx';
import type { ProfileInput, ProfilePicture } from './types.ts';

/** Size of the running drop, in parts of the lettering. */
const RUNNING = 0.36;
const RING = 0.8;

export interface Drawing {
  readonly picture: ProfilePicture;
  readonly input: ProfileInput;
}

export function Bead({ picture, input }: Drawing) {
  const at = store.bead.value;
  if (at === null) return <Hint picture={picture} input={input} />;
  const { bead, box, lines, x } = readOut(picture, input, Math.min(at, input.profile.length));
  const { size } = picture.frame;
  return (
    <g class="profile-bead">
      <rect
        class="profile-read-out"
        x={tidy(box.x)}
        y={tidy(box.y)}
        width={tidy(box.width)}
        height={tidy(box.height)}
        rx="4"
      />
      {lines.map(({ y, parts }) => (
        <text key={y} x={tidy(x)} y={tidy(y)} text-anchor="middle" font-size={size.text}>
          {parts.map(({ text, ink, bold }, i) => (
            <tspan
              key={i}
              dx={i === 0 ? 0 : PART_GAP}
              class={`profile-ink-${ink}${bold ? ' profile-bold' : ''}`}
            >
              {text}
            </tspan>
          ))}
        </text>
      ))}
      <g class="profile-ride" style={{ transform: `translate(${tidy(bead.x)}px, ${tidy(bead.y)}px)` }}>
        <circle class="profile-bead-ring" r="7" />
        <circle class="profile-bead-ball" r="4.5" />
      </g>
    </g>
  );
}

/** The drop of the pour test, on the line; the ring tells it from liquid that stays. */
export function RunningDrop({ picture: { frame, spots } }: Pick<Drawing, 'picture'>) {
  const now = store.pour.value;
  if (now === null) return null;
  const x = xOf(frame, Math.min(now.at, frame.length));
  return (
    <g class="profile-running" transform={`translate(${tidy(x)} ${tidy(curveY(spots, x))})`}>
      <circle r={tidy(frame.size.text * RING)} />
      <path d={drop(frame.size.text * RUNNING)} />
    </g>
  );
}

/** The upright through the bead, under all lettering. */
export function Plumb({ picture }: Pick<Drawing, 'picture'>) {
  const at = store.bead.value;
  if (at === null) return null;
  const { frame } = picture;
  const x = xOf(frame, Math.min(at, frame.length));
  const { head, axis } = frame.rows;
  return <path class="profile-plumb" d={`M${tidy(x)} ${tidy(head.bottom - 2)}V${tidy(axis.top)}`} />;
}

/** Where the read-out will be: which way the line drains, and what to do. */
function Hint({ picture, input }: Drawing) {
  const { size, rows } = picture.frame;
  return (
    <text
      class="profile-ink-muted"
      x={size.width / 2}
      y={tidy(rows.head.top + size.text * 1.2)}
      text-anchor="middle"
      font-size={size.text}
    >
      {drainWords(input)}
    </text>
  );
}

function drainWords({ worked }: ProfileInput): string {
  const to = worked.line.drain?.to;
  const drains =
    to === undefined
      ? 'no drain end is given'
      : to === 'both'
        ? 'drains to both ends'
        : `drains to end ${to}`;
  return `${drains} · point or drag along the line to read it`;
}
