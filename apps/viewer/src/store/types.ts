/** What the parts of the viewer agree on: one store of signals, one direction. Millimetres and radians. */
import type { ReadonlySignal } from '@preact/signals';
import type {
  Job,
  JobEdit,
  JobIssue,
  Kept,
  LengthStyle,
  LineProfile,
  ProfileFall,
  Vec3,
  WorkedJob,
  WorkedLine,
} from 'runback';

/** What is selected, the same in the scene, the run profile and the words. Indices count from 0, end A first. */
export type Selection =
  | { readonly kind: 'point'; readonly index: number }
  /** The straight leg from point `index` to the next. */
  | { readonly kind: 'leg'; readonly index: number }
  /** Bend `index` of the centreline, from end A. */
  | { readonly kind: 'bend'; readonly index: number }
  | { readonly kind: 'surrounding'; readonly id: string }
  /** Finding `index` of the line's findings. */
  | { readonly kind: 'finding'; readonly index: number };

export type ColourMode = 'slope' | 'clearance' | 'plain';
export type Projection = 'perspective' | 'parallel';
/** The faces of the viewer; on a wide screen `look` holds scene, run profile and words together. */
export type Face = 'look' | 'checks' | 'words' | 'sheet' | 'steps';
export type ThemeChoice = 'auto' | 'light' | 'dark' | 'contrast';
/** Surfaces kept off are shown near the selection, everywhere or nowhere. */
export type KeepOffShown = 'near' | 'all' | 'none';

/** Ways of looking that are remembered on this device and are no part of the job. */
export interface Looks {
  readonly colour: ColourMode;
  readonly projection: Projection;
  readonly keepOff: KeepOffShown;
  readonly theme: ThemeChoice;
  /** Length style for reading; `null`: as the job's units. */
  readonly style: LengthStyle | null;
  /** Dragged corners go to whole steps of this, mm; 0: free. */
  readonly snap: number;
  /** How the operator stands, asked once for the bend steps; `null`: not asked yet, or as the job's bender says. */
  readonly stance: StanceChoice | null;
}

export interface StanceChoice {
  readonly stand: 'side' | 'behind-free' | 'at-start';
  readonly startOn: 'left' | 'right';
}

/** Where the machine is tipped in the viewer, radians; positive pitch is nose down, positive roll right side down. */
export interface Tilt {
  readonly pitch: number;
  readonly roll: number;
}

/** What stays in the chosen line in the present tilt. `liquid` is `null` when it is not asked to drain, `air` when not bled. */
export interface PocketsNow {
  readonly liquid: Kept | null;
  readonly air: Kept | null;
}

/** A drop that was let go on the chosen line. */
export interface Drop {
  /** Where it was let go, mm from end A. */
  readonly from: number;
  /** Where it is now, mm from end A. */
  readonly at: number;
  /** The end it falls out of, once it is there; `null`: it stays. */
  readonly out: 'A' | 'Z' | null;
  readonly moving: boolean;
}

/** Where the text came from and where a save goes. */
export type Origin =
  | { readonly kind: 'demo' }
  | { readonly kind: 'new' }
  /** A file picked or dropped; `handle` when the browser can write back to it. */
  | { readonly kind: 'file'; readonly handle: FileSystemFileHandle | null }
  /** Served by `runback view`: saved through the server, watched on disk. */
  | { readonly kind: 'served' };

/** A change of the job on disk while there are unsaved edits here: the person chooses. */
export interface DiskChange {
  readonly text: string;
  readonly tag: string;
}

/** Faults of a text that could not be opened, with its name: shown until dismissed; what was open stays open. */
export interface OpenFault {
  readonly name: string;
  readonly issues: readonly JobIssue[];
}

export interface Store {
  /** Name of the job file, e.g. `tender-7.job.json`. */
  readonly name: ReadonlySignal<string>;
  readonly origin: ReadonlySignal<Origin>;
  /** The text of the job now: the one thing that is edited, undone, saved. */
  readonly text: ReadonlySignal<string>;
  /** False when the text is what was last opened or saved. */
  readonly unsaved: ReadonlySignal<boolean>;
  /** True when the browser has the present text on disk: closing or killing it loses nothing. */
  readonly kept: ReadonlySignal<boolean>;
  /** The job as last read and worked; `null` until the first answer. `job.written` is in the job's own words and units. */
  readonly job: ReadonlySignal<Job | null>;
  readonly worked: ReadonlySignal<WorkedJob | null>;
  /** True while the worker has not answered for the present text, or still looks for cures. */
  readonly working: ReadonlySignal<boolean>;

  /** Id of the chosen line, and it worked; `null` before the first answer. */
  readonly lineId: ReadonlySignal<string | null>;
  readonly line: ReadonlySignal<WorkedLine | null>;
  /** Readings along the chosen line (independent of the tilt); `null` when it cannot exist. */
  readonly profile: ReadonlySignal<LineProfile | null>;
  /** Height and fall at each place of `profile` in the present tilt. */
  readonly falls: ReadonlySignal<readonly ProfileFall[] | null>;
  /** Liquid and air that stay in the present tilt; `null` for a line that cannot exist. */
  readonly pockets: ReadonlySignal<PocketsNow | null>;
  /** The drop of the pour test; `null`: none. */
  readonly pour: ReadonlySignal<Drop | null>;
  readonly selection: ReadonlySignal<Selection | null>;
  /** Place of the bead, mm from end A along the chosen line; `null`: no bead. */
  readonly bead: ReadonlySignal<number | null>;
  readonly tilt: ReadonlySignal<Tilt>;
  /** Up in body axes in the present tilt. */
  readonly up: ReadonlySignal<Vec3>;
  readonly looks: ReadonlySignal<Looks>;
  /** How lengths are read: `looks.style`, else the job's units. */
  readonly style: ReadonlySignal<LengthStyle>;
  readonly face: ReadonlySignal<Face>;

  /** Last refusal or success in words, announced to screen readers and shown for a while. */
  readonly said: ReadonlySignal<Said | null>;
  readonly openFault: ReadonlySignal<OpenFault | null>;
  readonly diskChange: ReadonlySignal<DiskChange | null>;
  readonly recent: ReadonlySignal<readonly RecentJob[]>;
  readonly canUndo: ReadonlySignal<string | null>;
  readonly canRedo: ReadonlySignal<string | null>;

  chooseLine(id: string): void;
  select(selection: Selection | null): void;
  setBead(at: number | null): void;
  /** The bead as long as a pointer is over the line; `null`: it is back where it was put. */
  peekBead(at: number | null): void;
  setTilt(tilt: Tilt): void;
  /** Lets a drop go at the bead, in the middle of the line without one. */
  letGo(): void;
  takeDrop(): void;
  setLooks(change: Partial<Looks>): void;
  setFace(face: Face): void;
  say(words: string, kind?: Said['kind']): void;

  /**
   * Edits the job's text as one step of the history, named for "Undo …". A change that would leave a file that cannot be
   * read is refused: nothing changes, and the faults are returned (and said). Edits of one gesture share a `gesture`
   * name and become one step.
   */
  edit(label: string, edits: readonly JobEdit[], options?: EditOptions): Promise<readonly JobIssue[]>;
  /**
   * Moves a point of the chosen line to `at` (mm, machine axes), as one step per `gesture`; for an opposite hand it
   * moves the point of the line it mirrors. Called as often as the pointer moves: only the latest is worked.
   */
  movePoint(index: number, at: Vec3, gesture: string): void;
  undo(): void;
  redo(): void;
  /** Opens a text as a new job (its history starts anew). Faulty text: `openFault`, and what was open stays. */
  open(text: string, from: { readonly name: string; readonly origin: Origin }): Promise<boolean>;
  /** Saves to where it came from, or asks where. */
  save(): Promise<void>;
  saveAs(): Promise<void>;
  /** Asks for a file and opens it. */
  openFile(): Promise<void>;
  openDropped(file: File, handle: FileSystemFileHandle | null): Promise<void>;
  openDemo(name?: 'tender-7' | 'first-try'): Promise<void>;
  openRecent(name: string): Promise<void>;
  dismissFault(): void;
  /** Takes the text on disk, or keeps the edits here (the next save then replaces the file). */
  answerDisk(answer: 'take' | 'keep'): void;
}

export interface RecentJob {
  readonly name: string;
}

export interface EditOptions {
  readonly gesture?: string;
}

export interface Said {
  readonly words: string;
  readonly kind: 'done' | 'fault';
  /** Grows with each one, so that the same words said twice are two. */
  readonly count: number;
}
