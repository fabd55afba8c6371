/** Reading rows of straight / turn / angle / radius as a person types them or keeps them in a table. */
import { type JobUnit, parseLength, type Row, turnFromHeight } from 'runback';
import { EXIT, Failure } from './failure.ts';

export interface RowsText {
  readonly text: string;
  readonly file: string;
  readonly units: JobUnit;
  /** Radius of rows that give none, mm; null when there is no such radius. */
  readonly radius: number | null;
}

export interface ReadRows {
  readonly rows: readonly Row[];
  readonly lastStraight: number;
}

const COLUMNS = ['straight', 'turn', 'angle', 'radius', 'height', 'along', 'curves', 'goes'] as const;
type Column = (typeof COLUMNS)[number];
type Cells = Partial<Record<Column, string>>;

const RADIAN = Math.PI / 180;
/** Exact at multiples of 90°, which are what people type. */
const radians = (deg: number): number => (deg % 90 === 0 ? (deg / 90) * (Math.PI / 2) : deg * RADIAN);

class RowReader {
  readonly faults: string[] = [];
  private readonly input: RowsText;

  constructor(input: RowsText) {
    this.input = input;
  }

  fault(line: number, message: string): null {
    this.faults.push(`${this.input.file}:${line}: ${message}`);
    return null;
  }

  length(cells: Cells, column: Column, line: number): number | null {
    const text = cells[column];
    if (text === undefined) return this.fault(line, `${column}: expected a length, found nothing`);
    try {
      return parseLength(text, this.input.units);
    } catch (error) {
      return this.fault(line, `${column}: ${(error as Error).message}`);
    }
  }

  degrees(cells: Cells, column: Column, line: number): number | null {
    const text = cells[column]?.replace(/°$/, '').trim();
    const value = text === undefined || text === '' ? Number.NaN : Number(text);
    if (Number.isFinite(value)) return radians(value);
    return this.fault(line, `${column}: expected degrees, found ${text ? `"${text}"` : 'nothing'}`);
  }

  angle(cells: Cells, line: number): number | null {
    const angle = this.degrees(cells, 'angle', line);
    if (angle === null || (angle > 0 && angle < 2 * Math.PI)) return angle;
    return this.fault(line, `angle: expected more than 0 and less than 360 degrees, found "${cells.angle}"`);
  }

  turn(cells: Cells, angle: number | null, line: number): number | null {
    if (cells.height === undefined) {
      const turn = this.degrees(cells, 'turn', line);
      if (turn === null || (turn > -Math.PI - Number.EPSILON && turn <= Math.PI)) return turn;
      return this.fault(line, `turn: expected −180 to 180 degrees, found "${cells.turn}"`);
    }
    if (cells.turn !== undefined) return this.fault(line, 'turn: give the turn or the height, not both');
    const height = this.length(cells, 'height', line);
    const along = this.length(cells, 'along', line);
    const curves = this.word(cells, { column: 'curves', line, words: ['left', 'right'] as const });
    const goes = this.word(cells, { column: 'goes', line, words: ['on', 'back'] as const });
    if (height === null || along === null || !curves || !goes || angle === null) return null;
    try {
      return turnFromHeight({ angle, height, along, curves, goes });
    } catch (error) {
      return this.fault(line, `height: ${(error as Error).message.replace(/^\w+: /, '')}`);
    }
  }

  word<W extends string>(
    cells: Cells,
    want: { column: Column; line: number; words: readonly W[] },
  ): W | null {
    const text = cells[want.column]?.toLowerCase();
    const found = want.words.find((word) => word === text);
    const list = want.words.join(' or ');
    return (
      found ??
      this.fault(want.line, `${want.column}: expected ${list}, found ${text ? `"${text}"` : 'nothing'}`)
    );
  }

  row(cells: Cells, line: number, first: boolean): Row | null {
    const before = this.faults.length;
    const straightBefore = this.length(cells, 'straight', line);
    const angle = this.angle(cells, line);
    if (first && (cells.turn ?? cells.height) !== undefined && Number(cells.turn) !== 0)
      this.fault(line, 'turn: the first bend has no turn, leave it empty');
    const turn = first ? null : this.turn(cells, angle, line);
    const radius = cells.radius === undefined ? this.input.radius : this.length(cells, 'radius', line);
    if (radius === null && cells.radius === undefined)
      this.fault(line, 'radius: none here and no --radius given');
    if (radius !== null && radius <= 0)
      this.fault(line, `radius: expected more than 0, found "${cells.radius}"`);
    if (straightBefore !== null && straightBefore < 0)
      this.fault(line, `straight: expected 0 or more, found "${cells.straight}"`);
    if (this.faults.length > before || straightBefore === null || angle === null || radius === null)
      return null;
    return { straightBefore, turn, angle, radius };
  }
}

const cut = (line: string): string[] =>
  line.split(/[,;\t]/).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .replaceAll('""', '"')
      .trim(),
  );

const named = (cells: readonly string[], columns: readonly Column[]): Cells => {
  const out: Cells = {};
  for (const [i, column] of columns.entries()) {
    const cell = cells[i];
    if (cell !== undefined && cell !== '' && cell !== '-') out[column] = cell;
  }
  return out;
};

interface Numbered {
  readonly line: number;
  readonly cells: readonly string[];
}

/** The first line names the columns when it has nothing but words in it. */
function header(first: Numbered | undefined, file: string): readonly Column[] | null {
  if (!first?.cells.every((cell) => /^[a-z]/i.test(cell))) return null;
  const names = first.cells.map((cell) => cell.toLowerCase());
  const unknown = names.find((name) => !COLUMNS.includes(name as Column));
  if (unknown !== undefined)
    throw new Failure(
      `${file}:${first.line}: expected columns out of ${COLUMNS.join(', ')}, found "${unknown}"`,
      EXIT.notUnderstood,
    );
  return names as Column[];
}

/**
 * Reads rows, one a line; the last line holds the last straight alone. Columns are straight, turn, angle, radius
 * unless the first line names them.
 * @throws Failure with every fault, each with its line.
 */
export function readRows(input: RowsText): ReadRows {
  const lines = input.text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .map((text, i): Numbered => ({ line: i + 1, cells: cut(text.replace(/#.*$/, '')) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const columns = header(lines[0], input.file);
  const body = (columns ? lines.slice(1) : lines).map(({ line, cells }) => ({
    line,
    cells: named(cells, columns ?? COLUMNS),
  }));
  const last = body.pop();
  if (!last)
    throw new Failure(
      `${input.file}: expected rows of straight, turn, angle, radius; found none`,
      EXIT.notUnderstood,
    );
  const reader = new RowReader(input);
  const rows = body.map(({ cells, line }, i) => reader.row(cells, line, i === 0));
  if (Object.keys(last.cells).some((column) => column !== 'straight'))
    reader.fault(
      last.line,
      'the last line holds the last straight alone (0 when the tube ends with its bend)',
    );
  const lastStraight = reader.length(last.cells, 'straight', last.line);
  if (lastStraight !== null && lastStraight < 0) reader.fault(last.line, 'straight: expected 0 or more');
  if (reader.faults.length > 0 || lastStraight === null)
    throw new Failure(reader.faults.join('\n'), EXIT.notUnderstood);
  return { rows: rows.filter((row) => row !== null), lastStraight };
}
