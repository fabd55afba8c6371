/** One bend: a row where there is room, a card where there is not. */
import { store } from '../../store/index.ts';
import type { BendRow } from './rows.ts';

export interface BendRowProps {
  readonly row: BendRow;
  /** Of its lengths. */
  readonly unit: string;
  readonly chosen: boolean;
}

export function BendRowView({ row, unit, chosen }: BendRowProps) {
  const choose = (): void => store.select({ kind: 'bend', index: row.index });
  return (
    <tr class={chosen ? 'words-bends-row selected' : 'words-bends-row'} onClick={choose}>
      <th scope="row" class="words-bends-name">
        <button
          type="button"
          class="btn-quiet"
          aria-pressed={chosen}
          aria-label={nameWords(row)}
          onClick={choose}
        >
          {row.name}
          {row.fromA && <small class="muted">{row.fromA}</small>}
        </button>
      </th>
      <Figure name="mark" strong value={row.mark} unit={` ${unit}`} />
      <td class="words-bends-turn">
        <strong>{row.turn}</strong>
        {row.seen && <span class="muted">{row.seen}</span>}
      </td>
      <Figure name="dial" strong value={row.dial} unit="°" />
      <Figure name="wanted" value={row.angle} unit="°" />
      <Figure name="radius" value={row.radius} unit={` ${unit}`} />
      <Figure name="straight before" value={row.straightBefore} unit={` ${unit}`} />
    </tr>
  );
}

const nameWords = ({ name, fromA }: BendRow): string =>
  fromA ? `Select bend ${name}, ${fromA} from end A` : `Select bend ${name}`;

interface FigureProps {
  /** Said before the figure on a card; a row has it in its head. */
  readonly name: string;
  readonly value: string | null;
  readonly unit: string;
  readonly strong?: boolean;
}

function Figure({ name, value, unit, strong = false }: FigureProps) {
  const figure = value === null ? <em class="verdict-note">not calibrated</em> : value;
  return (
    <td class={`words-bends-num words-bends-${name.split(' ')[0]}`}>
      <span class="words-bends-label" aria-hidden="true">
        {name}
      </span>
      {strong ? <strong>{figure}</strong> : figure}
      {value !== null && (
        <span class="words-bends-label" aria-hidden="true">
          {unit}
        </span>
      )}
    </td>
  );
}
