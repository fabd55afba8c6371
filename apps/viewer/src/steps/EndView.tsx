import type { BenchPlan, ToolPose } from 'runback';
import { arcPath, type EndSeen, endSeen, spot } from './end-view.ts';

interface EndViewProps {
  readonly plan: BenchPlan;
  readonly pose: ToolPose;
}

const R = 30;

/** The tube on its end: former, pencil line before the turn (pale) and after it, the way to turn. */
export function EndView({ plan, pose }: EndViewProps) {
  const seen = endSeen(plan, pose);
  const carried = plan.bench?.moves === 'bender';
  const still = pose.turns === null;
  return (
    <figure class="steps-end">
      <svg viewBox="-62 -47 124 94" aria-hidden="true" focusable="false">
        {carried && !still && <Former at={seen.formerBefore} pale />}
        <Former at={seen.former} pale={false} />
        <circle r={R} class="steps-end-tube" />
        {!carried && !still && <Pencil at={seen.pencilBefore} pale />}
        <Pencil at={seen.pencilAfter} pale={false} />
        {!still && <Turn seen={seen} to={carried ? seen.former : seen.pencilAfter} />}
        {seen.you !== null && <Person side={seen.you} out={seen.former === seen.you ? 55 : 46} />}
      </svg>
      <figcaption>
        seen from {seen.from} {seen.from === 'START' ? plan.from : plan.free}
      </figcaption>
    </figure>
  );
}

interface SpotProps {
  /** Degrees clockwise from up. */
  readonly at: number;
  readonly pale: boolean;
}

function Former({ at, pale }: SpotProps) {
  const path = `${arcPath(R * 1.08, at - 42, at + 42)} L ${spot(R * 1.45, at + 42).join(' ')} A ${R * 1.45} ${R * 1.45} 0 0 0 ${spot(R * 1.45, at - 42).join(' ')} Z`;
  return <path d={path} class={pale ? 'steps-end-former steps-end-was' : 'steps-end-former'} />;
}

function Pencil({ at, pale }: SpotProps) {
  const [[x1, y1], [x2, y2]] = [spot(R * 0.72, at), spot(R, at)];
  return (
    <g class={pale ? 'steps-end-pencil steps-end-was' : 'steps-end-pencil'}>
      <line x1={x1} y1={y1} x2={x2} y2={y2} />
      <circle cx={x2} cy={y2} r={4.6} />
    </g>
  );
}

const HEAD = 36;
const LEAST_TAIL = 70;

function Turn({ seen, to }: { readonly seen: EndSeen; readonly to: number }) {
  const { by } = seen;
  if (by === 'both')
    return (
      <>
        <Bow to={to + 90 + 50} way={1} length={100} />
        <Bow to={to + 90 - 50} way={-1} length={100} />
      </>
    );
  return <Bow to={to} way={by < 0 ? -1 : 1} length={Math.max(Math.abs(by), LEAST_TAIL)} />;
}

function Bow({ to, way, length }: { readonly to: number; readonly way: 1 | -1; readonly length: number }) {
  const r = R * 0.52;
  const neck = to - way * HEAD;
  const tail = to - way * length;
  const head = [spot(r, to), spot(r * 1.45, neck), spot(r * 0.55, neck)].map((p) => p.join(' ')).join(' L ');
  return (
    <g class="steps-end-turn">
      <path d={arcPath(r, tail, neck)} fill="none" />
      <path d={`M ${head} Z`} />
    </g>
  );
}

function Person({ side, out }: { readonly side: number; readonly out: number }) {
  const x = side === 90 ? out : -out;
  return (
    <g class="steps-person">
      <circle cx={x} cy={-9} r={5} />
      <path d={`M ${x - 8} 14 C ${x - 8} -5 ${x + 8} -5 ${x + 8} 14 Z`} />
    </g>
  );
}
