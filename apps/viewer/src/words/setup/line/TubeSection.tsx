/** The tube of the line: which one, its sizes, and one more out of the catalogue. */

import { useState } from 'preact/hooks';
import { catalogue } from 'runback';
import { type Committed, LengthInput, Pick, TextInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { sayExact } from '../edits/say.ts';
import { alsoUsing, materialChoices, sizesIn, tubeChoices, tubeFromCatalogue } from '../edits/tubes.ts';
import { entry, path } from '../edits/written.ts';
import { Cautions } from './Cautions.tsx';

export function TubeSection({ now }: { readonly now: MeasuredNow }) {
  const { job, line, own, at } = now;
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick
          label="Tube"
          value={own.tube}
          options={tubeChoices(job, catalogue, own.tube)}
          onCommit={(tube) => set(`change the tube of ${line.name}`, `${at}.tube`, tube)}
        />
        <Cautions of={line.tube.material.name} cautions={line.tube.material.cautions} />
      </div>
      {entry(job.tubes, own.tube) ? <Sizes now={now} /> : <Borrowed now={now} />}
      <div class="setup-wide">
        <Section inner id="tube-catalogue" title="Another tube of the catalogue">
          <FromCatalogue now={now} />
        </Section>
      </div>
    </div>
  );
}

/** A tube of the catalogue itself can only be changed once it is in the job. */
function Borrowed({ now: { job, own } }: { readonly now: MeasuredNow }) {
  const { edits } = tubeFromCatalogue(job, catalogue, own.tube);
  return (
    <div class="setup-wide setup-row">
      <span class="field-hint">This tube is the catalogue’s.</span>
      <Act
        label="Copy it into the job"
        onAct={() => change(`copy tube ${own.tube} into the job`, ...edits)}
      />
    </div>
  );
}

function Sizes({ now: { job, own, units } }: { readonly now: MeasuredNow }) {
  const tube = entry(job.tubes, own.tube);
  const at = path('tubes', own.tube);
  const also = alsoUsing(job, 'tube', { id: own.tube, but: own.id });
  const put =
    (key: string, what: string) =>
    (value: unknown): Committed =>
      set(`change the ${what} of tube ${own.tube}`, `${at}.${key}`, value);
  return (
    <>
      <LengthInput
        label="Outside diameter"
        value={tube?.od}
        units={units}
        sign="more than 0"
        onCommit={put('od', 'diameter')}
      />
      <LengthInput
        label="Wall"
        value={tube?.wall}
        units={units}
        sign="more than 0"
        onCommit={put('wall', 'wall')}
      />
      <div class="setup-wide">
        <Pick
          label="Material"
          value={tube?.material ?? ''}
          options={materialChoices(job, catalogue)}
          onCommit={put('material', 'material')}
        />
      </div>
      <LengthInput
        label="Stick or coil"
        value={tube?.stock}
        units={units}
        sign="more than 0"
        optional
        placeholder="not known"
        onCommit={put('stock', 'stock')}
      />
      <div class="setup-wide">
        <TextInput
          label="Note on this tube"
          value={tube?.note}
          longest={2000}
          onCommit={put('note', 'note')}
        />
      </div>
      {also.length > 0 && (
        <p class="setup-wide field-hint">Also of this tube, and changed with it: {also.join(', ')}.</p>
      )}
    </>
  );
}

function FromCatalogue({ now }: { readonly now: MeasuredNow }) {
  const { job, line, at, units } = now;
  const materials = materialChoices(job, catalogue).filter(
    ({ value }) => sizesIn(catalogue, value).length > 0,
  );
  const here = line.tube.material.id;
  const [material, setMaterial] = useState(
    materials.some(({ value }) => value === here) ? here : (materials[0]?.value ?? ''),
  );
  const sizes = sizesIn(catalogue, material);
  const [size, setSize] = useState('');
  const chosen = sizes.find(({ id }) => id === size) ?? sizes[0];
  if (!chosen) return null;
  const { id, edits } = tubeFromCatalogue(job, catalogue, chosen.id);
  const use = { path: `${at}.tube`, value: id };
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <Pick label="Material" value={material} options={materials} onCommit={setMaterial} />
      </div>
      <div class="setup-wide">
        <Pick
          label="Diameter × wall"
          value={chosen.id}
          options={sizes.map((one) => ({
            value: one.id,
            label: `${sayExact(one.od, units)} × ${sayExact(one.wall, units)}`,
          }))}
          onCommit={setSize}
        />
      </div>
      <p class="setup-wide field-hint">from the catalogue: {chosen.source}</p>
      <div class="setup-wide setup-row">
        <Act label="Use for this line" onAct={() => change(`make ${line.name} of ${id}`, ...edits, use)} />
        <Act
          look="btn-quiet"
          label="Only put it into the job"
          disabled={edits.length === 0}
          onAct={() => change(`add tube ${id}`, ...edits)}
        />
      </div>
    </div>
  );
}
