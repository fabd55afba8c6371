/** The signals themselves. Written by the actions beside this file alone. */
import { computed, signal } from '@preact/signals';
import {
  type Job,
  type LineProfile,
  pocketsIn,
  profileFalls,
  upIn,
  type Vec3,
  type WorkedJob,
  type WorkedLine,
} from 'runback';
import { begun, redoLabel, undoLabel } from './history.ts';
import { readLooks } from './looks.ts';
import type { DiskChange, Drop, Face, OpenFault, Origin, RecentJob, Said, Selection, Tilt } from './types.ts';

/** Up of a job whose lines are not worked yet. */
const UP: Vec3 = [0, 0, 1];

/** What stays in a line with `up` as up; liquid only in one that drains. */
function pocketsOf(line: WorkedLine | null, up: Vec3) {
  const kept = line?.centreline ? pocketsIn(line, up) : null;
  return kept && { ...kept, liquid: line?.line.drain ? kept.liquid : null };
}

export function makeState() {
  const history = signal(begun(''));
  const saved = signal('');
  const job = signal<Job | null>(null);
  const worked = signal<WorkedJob | null>(null);
  const profile = signal<LineProfile | null>(null);
  const wantedLine = signal<string | null>(null);
  const stand = signal<number | null>(null);
  const peek = signal<number | null>(null);
  const tilt = signal<Tilt>({ pitch: 0, roll: 0 });
  const looks = signal(readLooks());
  const text = computed(() => history.value.now.text);
  const line = computed(() => {
    const lines = worked.value?.lines ?? [];
    return lines.find((one) => one.line.id === wantedLine.value) ?? lines[0] ?? null;
  });
  const up = computed(() => {
    const axes = line.value?.line.axes;
    return axes ? upIn(axes, tilt.value.pitch, tilt.value.roll) : UP;
  });
  return {
    history,
    saved,
    job,
    worked,
    profile,
    wantedLine,
    tilt,
    looks,
    text,
    line,
    up,
    name: signal('untitled.job.json'),
    origin: signal<Origin>({ kind: 'demo' }),
    /** Of the served file on disk that the text began from. */
    tag: signal<string | null>(null),
    kept: signal(false),
    working: signal(false),
    selection: signal<Selection | null>(null),
    /** Where the bead was put, and where a pointer that passes over shows it. */
    stand,
    peek,
    bead: computed(() => peek.value ?? stand.value),
    pour: signal<Drop | null>(null),
    face: signal<Face>('look'),
    said: signal<Said | null>(null),
    openFault: signal<OpenFault | null>(null),
    diskChange: signal<DiskChange | null>(null),
    recent: signal<readonly RecentJob[]>([]),
    unsaved: computed(() => text.value !== saved.value),
    lineId: computed(() => line.value?.line.id ?? null),
    falls: computed(() =>
      profile.value && line.value ? profileFalls(profile.value, line.value.line, up.value) : null,
    ),
    pockets: computed(() => pocketsOf(line.value, up.value)),
    style: computed(() => looks.value.style ?? worked.value?.units ?? 'mm'),
    canUndo: computed(() => undoLabel(history.value)),
    canRedo: computed(() => redoLabel(history.value)),
  };
}

export type State = ReturnType<typeof makeState>;
