/** The opposite hand of a line: the little that is its own. */
import { store } from '../../../store/index.ts';
import { LengthInput, Pick } from '../../parts/index.ts';
import { type LineNow, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { nameOf, type WrittenMirror } from '../edits/written.ts';
import { acrossChoices } from './across.ts';
import { NameAndQuantity, Note } from './Basics.tsx';
import { ClearanceSection } from './ClearanceSection.tsx';

interface MirroredProps {
  readonly now: LineNow;
  readonly mirror: WrittenMirror;
}

export function Mirrored({ now, mirror }: MirroredProps) {
  const { job, line, at, units } = now;
  const source = job.lines.find(({ id }) => id === mirror.mirrorOf);
  const name = source ? nameOf(source) : mirror.mirrorOf;
  return (
    <>
      <div class="setup-row setup-said">
        <span>Opposite hand of {name}: tube, bender, ends, fall and clips are as there.</span>
        <button type="button" class="btn" onClick={() => store.chooseLine(mirror.mirrorOf)}>
          Go to {name}
        </button>
      </div>
      <Section id="what" title="What it is">
        <div class="setup-grid">
          <NameAndQuantity now={now} />
          <Pick
            label="Mirrored across"
            value={mirror.across}
            options={acrossChoices(line.axes)}
            onCommit={(axis) => set(`change the mirror of ${line.name}`, `${at}.across`, axis)}
          />
          <LengthInput
            label={`where ${mirror.across} is`}
            value={mirror.offset}
            units={units}
            optional
            placeholder="0"
            onCommit={(offset) => set(`change the mirror of ${line.name}`, `${at}.offset`, offset)}
          />
          <Note now={now} />
        </div>
      </Section>
      <Section id="clearance" title="Clearance">
        <ClearanceSection now={now} />
      </Section>
    </>
  );
}
