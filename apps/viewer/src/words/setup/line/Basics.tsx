/** What the line is: its name, what it is for, how many. */
import { catalogue } from 'runback';
import { Pick, TextInput } from '../../parts/index.ts';
import { ReadInput, readWhole } from '../bits/inputs.tsx';
import { type LineNow, type MeasuredNow, set } from '../bits/now.ts';
import { serviceChoices } from '../edits/ends.ts';
import { Cautions } from './Cautions.tsx';

export function Basics({ now }: { readonly now: MeasuredNow }) {
  const { job, line, own, at } = now;
  return (
    <div class="setup-grid">
      <NameAndQuantity now={now} />
      <div class="setup-wide">
        <Pick
          label="Service: what it is for"
          value={own.service ?? 'general'}
          options={serviceChoices(job, catalogue)}
          onCommit={(service) => set(`change the service of ${line.name}`, `${at}.service`, service)}
        />
        <Cautions of={line.service.name} cautions={line.service.cautions} />
      </div>
      <Note now={now} />
    </div>
  );
}

export function NameAndQuantity({ now }: { readonly now: LineNow }) {
  const { job, line, at, i } = now;
  const written = job.lines[i];
  return (
    <div class="setup-wide setup-most">
      <TextInput
        label="Name"
        value={written?.name}
        placeholder={line.name}
        onCommit={(name) => set(`name ${line.name}`, `${at}.name`, name)}
      />
      <ReadInput
        label="Quantity"
        shown={written?.quantity === undefined ? undefined : String(written.quantity)}
        placeholder={String(line.quantity)}
        read={readWhole}
        onCommit={(quantity) => set(`change the quantity of ${line.name}`, `${at}.quantity`, quantity)}
      />
    </div>
  );
}

export function Note({ now }: { readonly now: LineNow }) {
  const { job, line, at, i } = now;
  return (
    <div class="setup-wide">
      <TextInput
        label="Note"
        multiline
        longest={2000}
        value={job.lines[i]?.note}
        onCommit={(note) => set(`note on ${line.name}`, `${at}.note`, note)}
      />
    </div>
  );
}
