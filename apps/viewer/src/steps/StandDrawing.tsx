import { type EndName, stanceOf, type Vec3 } from 'runback';
import type { Bench } from './bench-choice.ts';

interface StandDrawingProps {
  readonly bench: Bench;
  /** False where only the place to stand is asked for. */
  readonly tool: boolean;
  readonly from: EndName;
}

const X = 80;
const Y = 34;
/** Half the length of the tube, across and in line with the looker. */
const ACROSS = 70;
const ALONG = 30;

type Point = readonly [number, number];

/** The bench from above, the operator at the foot of the page looking up it: tube, tool, which end is where. */
export function StandDrawing({ bench, tool, from }: StandDrawingProps) {
  const stance = stanceOf({ ...bench, moves: 'tube' });
  const inLine = stance.travel[0] === 0;
  const half = inLine ? ALONG : ACROSS;
  const at = (v: Vec3, by: number): Point => [X + v[0] * by, Y - v[1] * by];
  const [start, free] = [at(stance.travel, -half), at(stance.travel, half)];
  const under = tool && bench.moves === 'tube' && stance.former[2] <= 0;
  const side: Point = stance.former[2] === 0 ? at(stance.former, 16) : [X, Y];
  return (
    <svg class="steps-stand" viewBox="0 0 160 104" aria-hidden="true" focusable="false">
      {under && <Tool at={side} flat={stance.former[2] === 0} />}
      <line x1={start[0]} y1={start[1]} x2={free[0]} y2={free[1]} class="steps-stand-tube" />
      {tool && !under && <Tool at={side} flat={false} />}
      {tool && bench.moves === 'bender' && <Carried at={[X, Y]} inLine={inLine} />}
      <Tag at={start} words={`START ${from}`} start inLine={inLine} />
      <Tag at={free} words={`FREE ${from === 'A' ? 'Z' : 'A'}`} start={false} inLine={inLine} />
      <Operator />
    </svg>
  );
}

function Tool({ at: [x, y], flat }: { readonly at: Point; readonly flat: boolean }) {
  if (flat)
    return (
      <g class="steps-stand-tool">
        <circle cx={x} cy={y} r={13} />
        <circle cx={x} cy={y} r={1.8} class="steps-stand-hub" />
      </g>
    );
  return <rect x={x - 15} y={y - 7} width={30} height={14} rx={2} class="steps-stand-tool" />;
}

function Carried({ at: [x, y], inLine }: { readonly at: Point; readonly inLine: boolean }) {
  const path = 'M -6 -12 A 12 12 0 1 1 -6 12';
  return (
    <g transform={`translate(${x} ${y}) rotate(${inLine ? -90 : 0})`} class="steps-stand-round">
      <path d={path} fill="none" />
      <path d="M -13 12 L -3 6.5 L -3 17.5 Z" />
    </g>
  );
}

interface TagProps {
  readonly at: Point;
  readonly words: string;
  readonly start: boolean;
  readonly inLine: boolean;
}

function Tag({ at: [x, y], words, start, inLine }: TagProps) {
  const width = start ? 56 : 46;
  const left = inLine ? x + 8 : Math.min(Math.max(x - width / 2, 2), 158 - width);
  const top = inLine ? Math.max(2, y - 8) : y - 26;
  return (
    <g class={start ? 'steps-stand-start' : 'steps-stand-free'}>
      <rect x={left} y={top} width={width} height={16} rx={2} />
      <text x={left + width / 2} y={top + 12} text-anchor="middle">
        {words}
      </text>
    </g>
  );
}

function Operator() {
  return (
    <g class="steps-person" transform={`translate(${X} 88)`}>
      <ellipse rx={20} ry={8} class="steps-stand-shoulders" />
      <circle r={7.5} />
      <path d="M 0 -13 L 4.5 -6 L -4.5 -6 Z" />
      <text x={26} y={5} class="steps-stand-you">
        YOU
      </text>
    </g>
  );
}
