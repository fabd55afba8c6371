/** The points of the chosen line as they are written, to read and to change. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Job, WorkedLine } from 'runback';
import { type Selection, store } from '../../store/index.ts';
import { chosenPoints } from '../parts/chosen.ts';
import { axisNames } from './axes.ts';
import { moveBetweenCells } from './cell-keys.ts';
import { type Editing, editing } from './editing.ts';
import { LegStrip } from './LegStrip.tsx';
import { Mirrored } from './Mirrored.tsx';
import { type MenuPlace, PointMenu } from './PointMenu.tsx';
import { PointRowView } from './PointRowView.tsx';
import { pointRows, writtenPoints } from './rows.ts';
import './points.css';

export function PointsTable() {
  const job = store.job.value;
  const worked = store.line.value;
  if (!job || !worked) return <p class="muted words-empty">Reading the job…</p>;
  return worked.line.mirror ? (
    <Mirrored worked={worked} />
  ) : (
    <Points key={worked.line.id} job={job} worked={worked} selection={store.selection.value} />
  );
}

interface PointsProps {
  readonly job: Job;
  readonly worked: WorkedLine;
  readonly selection: Selection | null;
}

function Points({ job, worked, selection }: PointsProps) {
  const list = useRef<HTMLOListElement>(null);
  const [menu, setMenu] = useState<MenuPlace | null>(null);
  const written = writtenPoints(job.written, worked.line.id);
  const chosen = chosenPoints(worked, selection);
  const first = chosen[0];
  useEffect(() => {
    if (first !== undefined) list.current?.children[first]?.scrollIntoView({ block: 'nearest' });
  }, [first]);
  if (!written) return null;
  const edits: Editing = editing(store, { job, worked, written });
  const names = axisNames(worked.line.axes);
  return (
    <section class="words-points" aria-label={`Points of ${worked.line.name}`}>
      <Head names={names} units={job.units} />
      <ol ref={list} class="words-points-list" onKeyDown={moveBetweenCells}>
        {pointRows(worked, written).map((row) => (
          <li key={row.index} class="words-points-item">
            <PointRowView
              row={row}
              names={names}
              chosen={chosen.includes(row.index)}
              edits={edits}
              onMenu={(anchor) => setMenu({ row, anchor })}
            />
            {row.leg && (
              <LegStrip
                row={row}
                leg={row.leg}
                chosen={selection?.kind === 'leg' && selection.index === row.index}
                onSplit={() => edits.split(row.index)}
              />
            )}
          </li>
        ))}
      </ol>
      <PointMenu
        place={menu}
        count={worked.line.corners.length}
        edits={edits}
        onClose={() => setMenu(null)}
      />
    </section>
  );
}

function Head({ names, units }: { readonly names: readonly string[]; readonly units: string }) {
  return (
    <div class="words-points-head" aria-hidden="true">
      <span>point</span>
      {names.map((name) => (
        <span key={name} class="words-points-num">
          {name}, {units}
        </span>
      ))}
      <span class="words-points-wide">radius, {units}</span>
      <span class="words-points-wide">note</span>
    </div>
  );
}
