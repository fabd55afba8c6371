/** The drawing itself, without the bead. */

import { xOf, yOf } from './frame.ts';
import { tidy } from './measure.ts';
import { Dial, EndSign, FlagSign, FlowArrow, PocketArea, PocketSign, SeatSign } from './Signs.tsx';
import type { Label, Lane, ProfilePicture, Tone } from './types.ts';

interface Drawn {
  readonly picture: ProfilePicture;
  /** Ids of the patterns: one set for each drawing on the page. */
  readonly ids: string;
}

/** Hatch for what fails, dots for what notes: told apart without colour. */
export function Patterns({ ids }: { readonly ids: string }) {
  return (
    <defs>
      <pattern
        id={`${ids}-fail`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path class="profile-hatch" d="M3 0V6" />
      </pattern>
      <pattern
        id={`${ids}-note`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <circle class="profile-dot" cx="3.5" cy="3.5" r="1.3" />
      </pattern>
    </defs>
  );
}

const patterned = (tone: Tone): boolean => tone === 'fail' || tone === 'note';

export function Areas({ picture, ids }: Drawn) {
  return (
    <g>
      {picture.stretches.map(({ tone, area }, i) => (
        <g key={i}>
          <path class={`profile-area profile-area-${tone}`} d={area} />
          {patterned(tone) && <path fill={`url(#${ids}-${tone})`} d={area} />}
        </g>
      ))}
    </g>
  );
}

export function Curve({ picture }: { readonly picture: ProfilePicture }) {
  return (
    <g>
      {picture.stretches.map(({ line }, i) => (
        <path key={i} class="profile-halo" d={line} />
      ))}
      {picture.stretches.map(({ tone, line }, i) => (
        <path key={i} class={`profile-line profile-line-${tone}`} d={line} />
      ))}
    </g>
  );
}

/** The bands of the bends, and what is met when one points at them. */
export function Bands({ picture }: { readonly picture: ProfilePicture }) {
  const { bands, frame, chosen } = picture;
  const { plot, axis } = frame.rows;
  const height = axis.top - plot.top;
  return (
    <g>
      {chosen && (
        <rect
          class="profile-chosen"
          x={tidy(chosen[0])}
          y={tidy(plot.top)}
          width={tidy(chosen[1] - chosen[0])}
          height={tidy(height)}
        />
      )}
      {bands.map(({ index, x, width, selected, leader, dial }) => (
        <g key={index} class={selected ? 'profile-band profile-band-on' : 'profile-band'}>
          <rect x={tidy(x)} y={tidy(plot.top)} width={tidy(width)} height={tidy(height)} />
          {leader && <path class="profile-leader" d={leader} />}
          {dial && <Dial dial={dial} selected={selected} />}
        </g>
      ))}
    </g>
  );
}

export function Hits({ picture }: { readonly picture: ProfilePicture }) {
  return (
    <g>
      {picture.bands.map(({ index, hit }) => (
        <rect
          key={index}
          class="profile-hit"
          data-bend={index}
          x={tidy(hit.x)}
          y={tidy(hit.top)}
          width={tidy(hit.width)}
          height={tidy(hit.bottom - hit.top)}
        />
      ))}
    </g>
  );
}

export function Axes({ picture }: { readonly picture: ProfilePicture }) {
  const { frame, along, heights, datum } = picture;
  const { axis, plot } = frame.rows;
  const [left, right] = [tidy(frame.left), tidy(frame.right)];
  return (
    <g class="profile-axes">
      {heights.map(({ at }) => (
        <path key={at} class="profile-grid" d={`M${left} ${tidy(yOf(frame, at))}H${right}`} />
      ))}
      <path class="profile-datum" d={`M${left} ${tidy(datum)}H${right}`} />
      <path class="profile-foot" d={`M${left} ${tidy(plot.bottom)}H${right}`} />
      <path class="profile-base" d={`M${left} ${tidy(axis.top)}H${right}`} />
      {along.map(({ at }) => (
        <path key={at} class="profile-tick" d={`M${tidy(xOf(frame, at))} ${tidy(axis.top)}v4`} />
      ))}
    </g>
  );
}

export function Rules({ picture }: { readonly picture: ProfilePicture }) {
  return (
    <g class="profile-rules">
      {picture.rules.map(({ x1, x2, y, gap, selected }, i) => {
        const [a, b] = gap ?? [x2, x2];
        const parts = [
          a > x1 ? `M${tidy(x1)} ${tidy(y)}H${tidy(a)}` : '',
          b < x2 ? `M${tidy(b)} ${tidy(y)}H${tidy(x2)}` : '',
        ];
        if (a <= x1 && b >= x2) return null;
        const ends = [x1, x2].map((x) => `M${tidy(x)} ${tidy(y - 3)}v6`);
        return <path key={i} class={selected ? 'profile-rule-on' : ''} d={[...parts, ...ends].join('')} />;
      })}
    </g>
  );
}

export function LaneOfClearance({ lane, picture, ids }: Drawn & { readonly lane: Lane }) {
  const { left, right, rows } = picture.frame;
  const row = rows.lane!;
  return (
    <g class="profile-lane">
      {lane.chosen.map(({ top, bottom }) => (
        <rect
          key={top}
          class="profile-chosen"
          x={tidy(top)}
          y={tidy(row.top)}
          width={tidy(bottom - top)}
          height={tidy(row.bottom - row.top)}
        />
      ))}
      <path class="profile-clear" d={lane.clear} />
      <path class="profile-clear-line" d={lane.clearLine} />
      {lane.short !== '' && (
        <g>
          <path class="profile-area-fail" d={lane.short} />
          <path fill={`url(#${ids}-fail)`} d={lane.short} />
          <path class="profile-line-fail" d={lane.shortLine} />
        </g>
      )}
      <path class="profile-wanted" d={`M${tidy(left)} ${tidy(lane.zero)}H${tidy(right)}`} />
      {lane.changes.map((x) => (
        <path key={x} class="profile-change" d={`M${tidy(x)} ${tidy(row.top + 3)}V${tidy(lane.zero)}`} />
      ))}
      {lane.tightest && (
        <circle class="profile-tightest" cx={tidy(lane.tightest.x)} cy={tidy(lane.tightest.y)} r="2.5" />
      )}
    </g>
  );
}

/** What stays in the bore. */
export function Fills({ picture }: { readonly picture: ProfilePicture }) {
  return (
    <g>
      {picture.pockets.map((pocket) => (
        <PocketArea key={`${pocket.kind}-${pocket.at}`} pocket={pocket} />
      ))}
    </g>
  );
}

/** Signs that stand on or at the line. */
export function OnTheLine({
  picture,
  titles,
}: {
  readonly picture: ProfilePicture;
  readonly titles: (findings: readonly number[]) => string;
}) {
  const { text } = picture.frame.size;
  return (
    <g>
      {picture.seats.map((seat) => (
        <SeatSign key={`${seat.kind}-${seat.at}`} seat={seat} text={text} />
      ))}
      {picture.flows.map((flow, i) => (
        <FlowArrow key={i} flow={flow} text={text} />
      ))}
      {picture.flags.map((flag) => (
        <FlagSign key={flag.findings[0]} flag={flag} text={text} titles={titles(flag.findings)} />
      ))}
      {picture.pockets.map((pocket) => (
        <PocketSign key={`${pocket.kind}-${pocket.at}`} pocket={pocket} text={text} />
      ))}
      {picture.ends.map((end) => (
        <EndSign key={end.name} end={end} text={text} />
      ))}
    </g>
  );
}

export function Labels({ labels }: { readonly labels: readonly Label[] }) {
  return (
    <g class="profile-labels">
      {labels.map(({ key, text, x, y, anchor, size, ink, bold, halo }) => (
        <text
          key={key}
          class={`profile-ink-${ink}${bold ? ' profile-bold' : ''}${halo ? ' profile-haloed' : ''}`}
          x={tidy(x)}
          y={tidy(y)}
          text-anchor={anchor}
          font-size={size}
        >
          {text}
        </text>
      ))}
    </g>
  );
}
