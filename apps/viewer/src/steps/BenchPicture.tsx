import './bench.css';
import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { BenchStage, type Sight } from '../scene/bench/index.ts';
import { putLabels } from './put-labels.ts';

export interface BenchPictureProps extends Sight {
  /** What the picture shows, in words. */
  readonly says: string;
  /** How far to turn, put beside the arrow. */
  readonly amount: string | null;
}

const PULLED = 'Dashed: the free leg when pulled. A gap: longer than drawn.';
const LEGEND = {
  first: PULLED,
  tube: `Pale: before the turn. ${PULLED}`,
  carried: `Pale: the bender before you carry it round. ${PULLED}`,
} as const;

/** One bend from where the operator stands: tool, tube before the turn and after it, the free leg when pulled. */
export function BenchPicture({ plan, index, od, says, amount }: BenchPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useRef<HTMLDivElement>(null);
  const { stage, away, canShow } = useStage(canvas, words);
  useEffect(() => stage.current?.show({ plan, index, od }), [plan, index, od]);
  const turns = amount !== null;
  const carried = plan.bench?.moves === 'bender';
  return (
    <div class="bench-picture" data-swipe="no">
      <canvas ref={canvas} class="bench-canvas" role="img" aria-label={says} />
      <div ref={words} class="bench-labels" aria-hidden="true">
        <Labels plan={plan} amount={amount} carried={carried} />
      </div>
      {canShow ? (
        <>
          <p class="bench-legend" data-beside="">
            {LEGEND[turns ? (carried ? 'carried' : 'tube') : 'first']}
          </p>
          <div class="bench-buttons" data-beside="">
            {away && (
              <button type="button" class="btn" onClick={() => stage.current?.home()}>
                From where you stand
              </button>
            )}
            {turns && (
              <button
                type="button"
                class="btn"
                aria-label="Show the turn"
                onClick={() => stage.current?.play()}
              >
                ▶<span class="bench-words"> Show the turn</span>
              </button>
            )}
          </div>
        </>
      ) : (
        <p class="bench-none">No picture in this browser: use the picture of the sheet.</p>
      )}
    </div>
  );
}

interface Stray {
  readonly away: boolean;
  readonly canShow: boolean;
}

interface StageInUse extends Stray {
  readonly stage: RefObject<BenchStage | null>;
}

/** A stage on the canvas for as long as the picture is there. */
function useStage(
  canvas: RefObject<HTMLCanvasElement | null>,
  words: RefObject<HTMLDivElement | null>,
): StageInUse {
  const stage = useRef<BenchStage | null>(null);
  const [stray, setStray] = useState<Stray>({ away: false, canShow: true });
  useEffect(() => {
    try {
      stage.current = new BenchStage(canvas.current!, {
        labels: (labels) => putLabels(words.current, labels),
        strayed: (away) => setStray((last) => (last.away === away ? last : { ...last, away })),
      });
    } catch {
      setStray({ away: false, canShow: false });
    }
    return () => {
      stage.current?.dispose();
      stage.current = null;
    };
  }, [canvas, words]);
  return { stage, ...stray };
}

interface LabelsProps {
  readonly plan: Sight['plan'];
  readonly amount: string | null;
  readonly carried: boolean;
}

function Labels({ plan, amount, carried }: LabelsProps) {
  return (
    <>
      <span data-label="before" class="bench-label bench-pale">
        {carried ? '' : 'before the turn'}
      </span>
      <span data-label="former" class="bench-label bench-pale">
        {carried ? 'bender' : 'former'}
      </span>
      <span data-label="free" class="bench-label">
        FREE {plan.free}
      </span>
      <span data-label="you" class="bench-label">
        YOU
      </span>
      <span
        data-label="amount"
        class={`bench-label bench-amount ${(amount ?? '').length > 6 ? 'bench-amount-long' : ''}`}
      >
        {amount}
      </span>
      <span data-label="start" class="bench-label bench-tag">
        <span class="bench-to">to </span>START {plan.from}
      </span>
    </>
  );
}
