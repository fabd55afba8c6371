import { useEffect, useRef } from 'preact/hooks';
import { Footer } from './Footer.tsx';
import { Forbidden } from './Forbidden.tsx';
import { useFit } from './fit.ts';
import { Header } from './Header.tsx';
import { useKeys, useSwipe } from './moving.ts';
import { Screen } from './Screen.tsx';
import { Settings } from './Settings.tsx';
import { keepAwake } from './screen.ts';
import { type StepsAsk, type StepsModel, useSteps } from './use-steps.ts';

/** The steps of a line that can exist. */
export function Steps(ask: StepsAsk) {
  const model = useSteps(ask);
  const { standings, plan, steps, at, step, done, fails, asking, setSettings, moves } = model;
  const { line, findings } = ask.worked;
  const root = useRef<HTMLDivElement>(null);
  const body = useRef<HTMLElement>(null);
  useKeys(moves);
  useSwipe(root, moves);
  useEffect(keepAwake, []);
  useFit(body, asking ? null : step);
  return (
    <div class={`steps ${fails ? 'steps-failing' : ''}`} ref={root}>
      <div class="steps-frame">
        <Header
          line={line}
          plan={plan}
          title={asking ? 'How you stand' : step.title}
          place={asking ? null : `step ${at + 1} of ${steps.length}`}
          local={standings.local}
          leave={moves.leave}
          settings={() => setSettings(!asking)}
        />
        <section class="steps-body" aria-labelledby="steps-title" ref={body}>
          <Forbidden findings={findings} open={!asking && step.kind === 'saw'} />
          <Shown ask={ask} model={model} />
        </section>
        {!asking && <Footer steps={steps} at={at} done={done} moves={moves} locked={fails} />}
      </div>
    </div>
  );
}

interface ShownProps {
  readonly ask: StepsAsk;
  readonly model: StepsModel;
}

function Shown({ ask: { worked }, model }: ShownProps) {
  const { standings, plan, steps, step, done, fails, asking, setSettings } = model;
  if (!asking)
    return (
      <Screen
        plan={plan}
        line={worked.line}
        step={step}
        done={done}
        toggle={model.toggle}
        fails={fails}
        change={() => setSettings(true)}
      />
    );
  return (
    <Settings
      line={worked.line}
      from={model.from}
      setFrom={model.setFrom}
      standings={standings}
      steps={steps}
      done={done}
      goTo={model.go}
      clear={model.clear}
      answered={() => setSettings(false)}
    />
  );
}
