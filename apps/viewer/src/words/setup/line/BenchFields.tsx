/** How you stand at the bender: what decides the words for turns. */
import { type Committed, Pick } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { benchEdits, FIRST_BENCH, FORMERS, type WrittenBench } from '../edits/benders.ts';
import { path } from '../edits/written.ts';

interface BenchProps {
  readonly bender: string;
  readonly name: string;
  readonly bench: WrittenBench | undefined;
}

export function BenchFields({ bender, name, bench }: BenchProps) {
  const at = path('benders', bender, 'bench');
  return (
    <Section inner id="bench" title="How you stand" brief={bench ? brief(bench) : 'not said'}>
      {bench ? (
        <Stance bender={bender} name={name} bench={bench} />
      ) : (
        <>
          <p class="field-hint">
            Not said: the sheet then gives each turn only as it is seen from the start of the tube.
          </p>
          <Act label="Say how you stand" onAct={() => set(`say how you stand at ${name}`, at, FIRST_BENCH)} />
        </>
      )}
    </Section>
  );
}

const brief = ({ stand, startOn, moves }: WrittenBench): string => {
  const tube = moves === 'tube' ? 'tube is turned' : 'bender is carried';
  return `${stand === 'side' ? `start on your ${startOn}` : STANDS[stand]}, ${tube}`;
};

const STANDS: Readonly<Record<WrittenBench['stand'], string>> = {
  side: 'beside it, the tube across you',
  'behind-free': 'behind the free end',
  'at-start': 'at the start',
};
const STARTS = { left: 'on your left', right: 'on your right' };
const PLANES = { flat: 'flat', upright: 'upright' };
const FORMER_NAMES = {
  far: 'beyond it',
  near: 'on your side',
  above: 'above it',
  below: 'below it',
};
const MOVES = { tube: 'the tube', bender: 'the bender' };
const CHECKS = {
  flag: 'a flag',
  gauge: 'a gauge',
  height: 'the leg’s height',
};

const options = <T extends string>(names: Readonly<Record<T, string>>, of?: readonly T[]) =>
  (of ?? (Object.keys(names) as T[])).map((value) => ({ value, label: names[value] }));

function Stance({
  bender,
  name,
  bench,
}: {
  readonly bender: string;
  readonly name: string;
  readonly bench: WrittenBench;
}) {
  const put =
    <K extends keyof WrittenBench>(key: K) =>
    (value: string): Committed =>
      change(`say how you stand at ${name}`, ...benchEdits(bender, bench, [key, value as WrittenBench[K]]));
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick label="You stand" value={bench.stand} options={options(STANDS)} onCommit={put('stand')} />
      </div>
      <Pick label="Tagged start" value={bench.startOn} options={options(STARTS)} onCommit={put('startOn')} />
      <Pick label="The bender lies" value={bench.plane} options={options(PLANES)} onCommit={put('plane')} />
      <Pick
        label="Former, of the tube"
        value={bench.former}
        options={options(FORMER_NAMES, FORMERS[bench.plane])}
        onCommit={put('former')}
      />
      <Pick label="A turn moves" value={bench.moves} options={options(MOVES)} onCommit={put('moves')} />
      <Pick
        label="Turn checked by"
        value={bench.turnCheck ?? 'flag'}
        options={options(CHECKS)}
        onCommit={put('turnCheck')}
      />
      <div class="setup-wide">
        <Act
          look="btn-quiet"
          label="Leave it unsaid"
          onAct={() => set(`leave the stand at ${name} unsaid`, path('benders', bender, 'bench'), undefined)}
        />
      </div>
    </div>
  );
}
