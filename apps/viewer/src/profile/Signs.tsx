/** The small signs of the run profile. */
import { mlText } from '../pockets/index.ts';
import { tidy } from './measure.ts';
import { pocketSign } from './pockets.ts';
import { END_RADIUS, FLAG_RADIUS } from './tags.ts';
import type { Dial as DialOf, EndTag, Flag, Flow, Pocket, Seat } from './types.ts';

const move = (x: number, y: number): string => `translate(${tidy(x)} ${tidy(y)})`;

/** A clock face: the last bend left at 12, this one leaves where the hand points. */
export function Dial({ dial, selected }: { readonly dial: DialOf; readonly selected: boolean }) {
  const { x, y, radius: r, turn } = dial;
  const [tipX, tipY] = [Math.sin(turn) * r, -Math.cos(turn) * r];
  const way = turn < 0 ? 0 : 1;
  const wedge = `M0 0V${tidy(-r)}A${tidy(r)} ${tidy(r)} 0 ${Math.abs(turn) > Math.PI ? 1 : 0} ${way} ${tidy(tipX)} ${tidy(tipY)}Z`;
  return (
    <g class={selected ? 'profile-dial profile-dial-on' : 'profile-dial'} transform={move(x, y)}>
      <path class="profile-dial-wedge" d={wedge} />
      <circle r={tidy(r)} />
      <path d={`M0 0V${tidy(-r)}`} />
      <path class="profile-dial-hand" d={`M0 0L${tidy(tipX)} ${tidy(tipY)}`} />
    </g>
  );
}

/** An arrow the way liquid runs. */
export function FlowArrow({ flow, text }: { readonly flow: Flow; readonly text: number }) {
  const half = tidy(text * 0.42);
  const head = tidy(text * 0.26);
  const way = flow.to === 'Z' ? 1 : -1;
  return (
    <path
      class={`profile-flow profile-ink-${flow.ink}`}
      transform={move(flow.x, flow.y)}
      d={`M${tidy(-half * way)} 0H${tidy(half * way)}M${tidy((half - head) * way)} ${-head}L${tidy(half * way)} 0L${tidy((half - head) * way)} ${head}`}
    />
  );
}

export function SeatSign({ seat, text }: { readonly seat: Seat; readonly text: number }) {
  const on = seat.selected ? ' profile-seat-on' : '';
  const s = text / 11.5;
  return (
    <g>
      <path
        class={`profile-${seat.kind}${on}`}
        transform={`${move(seat.x, seat.y)} rotate(${tidy(seat.lean)})`}
        d={seat.kind === 'mark' ? `M0 ${tidy(-6 * s)}V${tidy(6 * s)}` : clip(3.8 * s)}
      />
      {seat.sign && (
        <path
          class={`profile-${seat.kind === 'mark' ? 'pencil' : 'clip'}${on}`}
          transform={move(seat.sign.x, seat.sign.y)}
          d={
            seat.kind === 'mark'
              ? `M${tidy(-2.6 * s)} ${tidy(-3.6 * s)}H${tidy(2.6 * s)}L0 ${tidy(3.6 * s)}Z`
              : clip(2.8 * s)
          }
        />
      )}
    </g>
  );
}

/** A clip over the tube, with its two feet. */
function clip(r: number): string {
  const [a, foot] = [tidy(r), tidy(r * 1.6)];
  return `M${-foot} ${a}H${-a}V0A${a} ${a} 0 0 1 ${a} 0V${a}H${foot}`;
}

/** The filled part of the bore, under the line of the profile. */
export function PocketArea({ pocket: { kind, fill } }: { readonly pocket: Pocket }) {
  return (
    <g class={`profile-fill profile-fill-${kind}`}>
      <path d={fill.area} />
      {fill.surface !== '' && <path class="profile-surface" d={fill.surface} />}
    </g>
  );
}

const STAYS = { liquid: 'Liquid stays here', air: 'Air stays here' } as const;

/** A drop where liquid stays, a bubble where air does. */
export function PocketSign({ pocket, text }: { readonly pocket: Pocket; readonly text: number }) {
  const { x, y } = pocketSign(text, pocket);
  const { kind, findings, times, volume } = pocket;
  const r = text * 0.42 * times;
  const told = findings.length === 0 ? '' : ' profile-told';
  const on = pocket.selected ? ' profile-sign-on' : '';
  return (
    <g
      class={`profile-pocket${told}${on}`}
      transform={move(x, y)}
      data-findings={findings.length === 0 ? undefined : findings.join(' ')}
    >
      <circle class="profile-hit" r={tidy(text * 1.2)} />
      {kind === 'liquid' ? (
        <path class="profile-drop" d={drop(r)} />
      ) : (
        <circle class="profile-bubble" r={tidy(r)} />
      )}
      {kind === 'air' && (
        <path
          class="profile-shine"
          d={`M${tidy(-r * 0.45)} ${tidy(-r * 0.1)}A${tidy(r * 0.5)} ${tidy(r * 0.5)} 0 0 1 ${tidy(r * 0.05)} ${tidy(-r * 0.5)}`}
        />
      )}
      <title>{`${STAYS[kind]}: ${mlText(volume)}`}</title>
    </g>
  );
}

/** A drop with its tip up. */
export function drop(r: number): string {
  const [side, tip] = [tidy(r * 0.92), tidy(-r * 1.5)];
  return `M0 ${tip}C${tidy(r * 0.3)} ${tidy(-r * 0.7)} ${side} ${tidy(-r * 0.3)} ${side} ${tidy(r * 0.2)}A${side} ${side} 0 0 1 ${-side} ${tidy(r * 0.2)}C${-side} ${tidy(-r * 0.3)} ${tidy(-r * 0.3)} ${tidy(-r * 0.7)} 0 ${tip}Z`;
}

/** The mark of a verdict in a little disc, with a stem to its place on the line. */
export function FlagSign({
  flag,
  text,
  titles,
}: {
  readonly flag: Flag;
  readonly text: number;
  readonly titles: string;
}) {
  const r = text * FLAG_RADIUS;
  const a = r * 0.4;
  const cross = `M${tidy(-a)} ${tidy(-a)}L${tidy(a)} ${tidy(a)}M${tidy(a)} ${tidy(-a)}L${tidy(-a)} ${tidy(a)}`;
  const bang = `M0 ${tidy(-r * 0.58)}V${tidy(r * 0.12)}M0 ${tidy(r * 0.46)}V${tidy(r * 0.56)}`;
  return (
    <g
      class={`profile-flag profile-flag-${flag.verdict}${flag.selected ? ' profile-sign-on' : ''}`}
      data-findings={flag.findings.join(' ')}
    >
      <path
        class="profile-stem"
        d={`M${tidy(flag.x)} ${tidy(flag.y - r)}L${tidy(flag.foot.x)} ${tidy(flag.foot.y)}`}
      />
      <g transform={move(flag.x, flag.y)}>
        <circle class="profile-hit" r={tidy(text * 1.25)} />
        <circle class="profile-disc" r={tidy(r)} />
        <path class="profile-glyph" d={flag.verdict === 'fail' ? cross : bang} />
      </g>
      <title>{titles}</title>
    </g>
  );
}

/** The tag of an end; the end that drains has a drop under it. */
export function EndSign({ end, text }: { readonly end: EndTag; readonly text: number }) {
  const r = text * END_RADIUS;
  return (
    <g class="profile-end">
      <circle transform={move(end.x, end.y)} r={tidy(r)} />
      {end.drop && (
        <path class="profile-drain" transform={move(end.drop.x, end.drop.y)} d={drop(text * 0.34)} />
      )}
    </g>
  );
}
