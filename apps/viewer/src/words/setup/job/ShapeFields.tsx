/** The numbers of a surrounding, by its shape. */
import type { JobUnit } from 'runback';
import { type Committed, LengthInput, type WrittenLength } from '../../parts/index.ts';
import { PointInput, ReadInput } from '../bits/inputs.tsx';
import { set } from '../bits/now.ts';
import { readDirection } from '../edits/ends.ts';
import { path, type WrittenSurrounding } from '../edits/written.ts';

interface ShapeProps {
  readonly one: WrittenSurrounding;
  readonly i: number;
  readonly units: JobUnit;
}

/** Points and sizes of a shape, as people say them. */
const POINTS = [
  ['min', 'Lowest corner'],
  ['max', 'Highest corner'],
  ['centre', 'Centre'],
  ['size', 'Size along x, y and z'],
  ['from', 'From'],
  ['to', 'To'],
  ['point', 'A point of it'],
] as const;

export function ShapeFields({ one, i, units }: ShapeProps) {
  const given = one as Readonly<Record<string, unknown>>;
  const at = path('surroundings', i);
  return (
    <>
      {POINTS.filter(([key]) => Array.isArray(given[key])).map(([key, name]) => (
        <PointInput
          key={key}
          name={name}
          value={given[key] as readonly WrittenLength[]}
          units={units}
          {...(key === 'size' && { sign: 'more than 0' as const })}
          onCommit={(axis, value) => set(`move ${one.id}`, `${at}.${key}[${axis}]`, value)}
        />
      ))}
      {one.shape === 'tube' &&
        one.points.map((point, k) => (
          <PointInput
            key={k}
            name={`Point ${k + 1}`}
            value={point}
            units={units}
            onCommit={(axis, value) => set(`move ${one.id}`, `${at}.points[${k}][${axis}]`, value)}
          />
        ))}
      <Sizes one={one} i={i} units={units} />
      {one.shape === 'box' && one.axes && (
        <p class="field-hint">A turned box: its axes are as the file says.</p>
      )}
    </>
  );
}

function Sizes({ one, i, units }: ShapeProps) {
  const at = path('surroundings', i);
  const put =
    (key: string) =>
    (value: unknown): Committed =>
      set(`change the size of ${one.id}`, `${at}.${key}`, value);
  const common = { units, sign: 'more than 0' } as const;
  if (one.shape === 'box') return null;
  return (
    <div class="setup-grid">
      {one.shape === 'plane' && (
        <ReadInput
          label="Its free side: x y z"
          shown={one.normal.join(' ')}
          read={readDirection}
          onCommit={(normal) => (normal === undefined ? undefined : put('normal')(normal))}
        />
      )}
      {(one.shape === 'sphere' || one.shape === 'cylinder') && (
        <LengthInput {...common} label="Diameter" value={one.diameter} onCommit={put('diameter')} />
      )}
      {one.shape === 'tube' && (
        <>
          <LengthInput {...common} label="Outside diameter" value={one.od} onCommit={put('od')} />
          <LengthInput
            {...common}
            label="Radius of its corners"
            value={one.radius}
            optional
            placeholder="sharp"
            onCommit={put('radius')}
          />
        </>
      )}
    </div>
  );
}
