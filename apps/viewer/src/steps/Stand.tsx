import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { EndName, Line } from 'runback';
import { placeWords, toolWords } from 'runback/sheet';
import { store } from '../store/index.ts';
import {
  type Bench,
  choiceOf,
  STANDINGS,
  type Standing,
  sameBench,
  sameStanding,
  toolFor,
  toolsFor,
} from './bench-choice.ts';
import { StandDrawing } from './StandDrawing.tsx';
import { putOff, type Standings, standAsJob, standSo } from './standing.ts';

interface StandProps {
  readonly line: Line;
  readonly from: EndName;
  readonly standings: Standings;
  /** The question is answered. */
  readonly answered: () => void;
}

/** Where the operator stands, which hand START is on, what the tool is like. */
export function Stand({ line, from, standings, answered }: StandProps) {
  const { job, bench: now } = standings;
  const last = store.looks.value.stance;
  const [standing, setStanding] = useState<Standing | null>(now ?? last);
  const [tool, setTool] = useState<Bench | null>(now);
  const chosen = standing && tool ? choiceOf({ ...tool, ...standing }, job) : null;
  const stand = (next: Standing): void => {
    setStanding(next);
    setTool((before) => toolFor(next, before));
  };
  return (
    <div class="steps-ask">
      <Choices name="Where do you stand?">
        {STANDINGS.map((one) => (
          <Choice
            key={`${one.stand} ${one.startOn}`}
            chosen={standing !== null && sameStanding(one, standing)}
            choose={() => stand(one)}
            words={placeWords(one)}
          >
            <StandDrawing bench={toolsFor(one)[2]!} tool={false} from={from} />
          </Choice>
        ))}
      </Choices>
      {standing && (
        <Choices name="What is the bender like?">
          {toolsFor(standing).map((one) => (
            <Choice
              key={toolWords(one)}
              chosen={tool !== null && sameBench(one, tool)}
              choose={() => setTool(one)}
              words={toolWords(one)}
            >
              <StandDrawing bench={one} tool from={from} />
            </Choice>
          ))}
        </Choices>
      )}
      <Answers line={line} standings={standings} chosen={chosen} answered={answered} />
    </div>
  );
}

interface ChoicesProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

function Choices({ name, children }: ChoicesProps) {
  return (
    <fieldset class="steps-choices">
      <legend>{name}</legend>
      {children}
    </fieldset>
  );
}

interface ChoiceProps {
  readonly chosen: boolean;
  readonly choose: () => void;
  readonly words: string;
  readonly children: ComponentChildren;
}

function Choice({ chosen, choose, words, children }: ChoiceProps) {
  return (
    <button type="button" class="steps-choice" aria-pressed={chosen} onClick={choose}>
      {children}
      <span>
        {chosen ? '✓ ' : ''}
        {words}
      </span>
    </button>
  );
}

interface AnswersProps extends Omit<StandProps, 'from'> {
  readonly chosen: Bench | null;
}

function Answers({ line: { bender }, standings: { job, ask }, chosen, answered }: AnswersProps) {
  if (bender === null) return null;
  const remember = (bench: Bench): void =>
    store.setLooks({ stance: { stand: bench.stand, startOn: bench.startOn } });
  const forNow = (bench: Bench): void => {
    if (sameBench(bench, job)) standAsJob(bender.id);
    else standSo(bender.id, bench);
    remember(bench);
    answered();
  };
  const write = async (bench: Bench): Promise<void> => {
    const faults = await store.edit(`stand at ${bender.id}`, [
      { path: `${bender.path}.bench`, value: bench },
    ]);
    if (faults.length > 0) return;
    standAsJob(bender.id);
    remember(bench);
    answered();
  };
  const asJob = chosen !== null && sameBench(chosen, job);
  return (
    <div class="steps-answers">
      <button
        type="button"
        class="btn-main steps-big"
        disabled={chosen === null}
        onClick={() => chosen && forNow(chosen)}
      >
        {asJob ? 'As the job says' : job ? 'So, for now' : 'I stand so'}
      </button>
      {!asJob && (
        <button
          type="button"
          class="btn steps-big"
          disabled={chosen === null}
          onClick={() => chosen && void write(chosen)}
        >
          Write it in the job
        </button>
      )}
      {ask && (
        <button
          type="button"
          class="btn steps-big"
          onClick={() => {
            putOff(bender.id);
            answered();
          }}
        >
          Not sure: as seen from START
        </button>
      )}
    </div>
  );
}
