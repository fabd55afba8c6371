/** The run profile: the line unrolled along its length. */
import { useId, useMemo } from 'preact/hooks';
import type { LineProfile, WorkedLine } from 'runback';
import { store } from '../store/index.ts';
import { Bead, Plumb, RunningDrop } from './Bead.tsx';
import {
  Areas,
  Axes,
  Bands,
  Curve,
  Fills,
  Hits,
  Labels,
  LaneOfClearance,
  OnTheLine,
  Patterns,
  Rules,
} from './Plot.tsx';
import { profilePicture } from './picture.ts';
import { Slider } from './Slider.tsx';
import { pencilMarks } from './seats.ts';
import type { ProfileInput, Size } from './types.ts';
import { useSize } from './use-size.ts';
import './profile.css';

export function RunProfile() {
  const { box, size } = useSize();
  const worked = store.line.value;
  return (
    <div class="profile" ref={box}>
      {worked && worked.centreline === null && <Impossible worked={worked} />}
      {worked?.centreline && size && <Unrolled worked={worked} size={size} />}
    </div>
  );
}

/** Says why there is nothing to draw. */
function Impossible({ worked }: { readonly worked: WorkedLine }) {
  const reasons = worked.findings
    .map((finding, index) => ({ finding, index }))
    .filter(({ finding }) => finding.verdict === 'fail');
  return (
    <div class="profile-impossible">
      <h3>This line cannot be bent as it is drawn</h3>
      {reasons.map(({ finding, index }) => (
        <button
          key={index}
          type="button"
          class="profile-reason"
          onClick={() => store.select({ kind: 'finding', index })}
        >
          <span class="verdict-fail" aria-hidden="true">
            ✕
          </span>{' '}
          {finding.message}
        </button>
      ))}
      <p class="muted">Its profile is drawn as soon as every corner has room for its bend.</p>
    </div>
  );
}

/** While another line is worked up the last profile may still stand there. */
const isOf = ({ centreline }: WorkedLine, { length, bends }: LineProfile): boolean =>
  centreline?.length === length && centreline.bends.length === bends.length;

function useInput(worked: WorkedLine, size: Size): ProfileInput | null {
  const { value: profile } = store.profile;
  const { value: falls } = store.falls;
  const { value: style } = store.style;
  const { value: up } = store.up;
  const { value: pockets } = store.pockets;
  const { value: selection } = store.selection;
  const { colour } = store.looks.value;
  const marks = useMemo(() => pencilMarks(worked, style), [worked, style]);
  return useMemo(
    () =>
      profile && falls && isOf(worked, profile) && falls.length === profile.places.length
        ? { worked, profile, falls, up, pockets, marks, colour, style, selection, size }
        : null,
    [worked, profile, falls, up, pockets, marks, colour, style, selection, size],
  );
}

function Unrolled({ worked, size }: { readonly worked: WorkedLine; readonly size: Size }) {
  const input = useInput(worked, size);
  const ids = `profile${useId()}`;
  const picture = useMemo(() => input && profilePicture(input), [input]);
  if (!input || !picture) return null;
  const titles = (findings: readonly number[]): string =>
    findings.map((i) => worked.findings[i]!.message).join('\n');
  const { lane, limit } = picture;
  return (
    <Slider picture={picture} input={input}>
      <svg
        class="profile-svg"
        viewBox={`0 0 ${size.width} ${size.height}`}
        width={size.width}
        height={size.height}
        aria-hidden="true"
      >
        <Patterns ids={ids} />
        <Bands picture={picture} />
        <Areas picture={picture} ids={ids} />
        <Axes picture={picture} />
        {limit && <path class="profile-limit-level" d={limit.level} />}
        <Fills picture={picture} />
        <Curve picture={picture} />
        {limit && <path class="profile-limit" d={limit.slope} />}
        <Rules picture={picture} />
        {lane && <LaneOfClearance lane={lane} picture={picture} ids={ids} />}
        <Hits picture={picture} />
        <OnTheLine picture={picture} titles={titles} />
        <Plumb picture={picture} />
        <Labels labels={picture.labels} />
        <RunningDrop picture={picture} />
        <Bead picture={picture} input={input} />
      </svg>
    </Slider>
  );
}
