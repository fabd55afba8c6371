/** The points of an opposite hand: its own coordinates to read, and the way to the line they are written in. */
import { formatLength, type WorkedLine } from 'runback';
import { store } from '../../store/index.ts';
import { chosenPoints, pointName } from '../parts/chosen.ts';
import { readable } from '../parts/read.ts';
import { axisNames } from './axes.ts';

export function Mirrored({ worked }: { readonly worked: WorkedLine }) {
  const { line } = worked;
  const of = store.worked.value?.lines.find((each) => each.line.id === line.mirror?.of)?.line;
  const style = store.style.value;
  const unit = style === 'mm' ? 'mm' : 'in';
  const chosen = chosenPoints(worked, store.selection.value);
  const show = (mm: number): string => readable(formatLength(mm, style, { bare: true }));
  return (
    <section class="words-points" aria-label={`Points of ${line.name}`}>
      {of && (
        <div class="words-points-hand">
          <p>Opposite hand of {of.name}: its points follow that line, edit that one.</p>
          <button type="button" class="btn" onClick={() => store.chooseLine(of.id)}>
            Go to {of.name}
          </button>
        </div>
      )}
      <table class="table words-points-read">
        <thead>
          <tr>
            <th scope="col">point</th>
            {axisNames(line.axes).map((name) => (
              <th key={name} scope="col" class="num">
                {name}, {unit}
              </th>
            ))}
            <th scope="col" class="num">
              radius, {unit}
            </th>
          </tr>
        </thead>
        <tbody>
          {line.corners.map((corner, index) => (
            <tr key={corner.path} class={chosen.includes(index) ? 'selected' : undefined}>
              <th scope="row">
                <button
                  type="button"
                  class="btn-quiet"
                  aria-pressed={chosen.includes(index)}
                  onClick={() => store.select({ kind: 'point', index })}
                >
                  {pointName(index, line.corners.length)}
                </button>
              </th>
              {corner.at.map((mm, axis) => (
                <td key={axis} class="num">
                  {show(mm)}
                </td>
              ))}
              <td class="num">{corner.radius > 0 ? show(corner.radius) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
