/** Where the line is clipped: distances from the finished end A, none at all, or not said. */
import { LengthInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { addClip } from '../edits/ends.ts';

export function ClipsSection({ now }: { readonly now: MeasuredNow }) {
  const { own, line, at } = now;
  if (own.clips === undefined)
    return (
      <div class="setup-row">
        <span class="field-hint">Not given: clips are not judged.</span>
        <Act label="Give clips" onAct={() => set(`give clips of ${line.name}`, `${at}.clips`, [])} />
      </div>
    );
  return <Clips now={now} clips={own.clips} />;
}

interface ClipsProps {
  readonly now: MeasuredNow;
  readonly clips: readonly (number | string)[];
}

function Clips({ now, clips }: ClipsProps) {
  const { job, line, at, i, units } = now;
  const where = (k: number): string => `${at}.clips[${k}]`;
  return (
    <>
      <p class="field-hint">
        {clips.length === 0 ? 'No clips at all. ' : ''}Along the centreline from the finished end A.
      </p>
      <div class="setup-grid">
        {clips.map((clip, k) => (
          // Clips have no names: their places in the list are all there is.
          <div key={k} class="setup-rowed">
            <LengthInput
              label={`Clip ${k + 1}`}
              value={clip}
              units={units}
              sign="not negative"
              onCommit={(value) => set(`move a clip of ${line.name}`, where(k), value)}
            />
            <Act
              look="btn-quiet"
              label="×"
              name={`Remove clip ${k + 1}`}
              onAct={() => set(`remove a clip of ${line.name}`, where(k), undefined)}
            />
          </div>
        ))}
        <LengthInput
          key={`add ${clips.length}`}
          label="Add a clip at"
          value={undefined}
          units={units}
          sign="not negative"
          optional
          onCommit={(value) =>
            value === undefined ? undefined : change(`add a clip to ${line.name}`, ...addClip(job, i, value))
          }
        />
      </div>
      <Act
        look="btn-quiet"
        label="Leave clips unsaid"
        onAct={() => set(`leave the clips of ${line.name} unsaid`, `${at}.clips`, undefined)}
      />
    </>
  );
}
