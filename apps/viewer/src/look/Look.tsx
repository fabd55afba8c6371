/** The scene with its own controls over it. */
import { useCallback, useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { ColourSwitch } from './ColourSwitch.tsx';
import { CornerBar } from './CornerBar.tsx';
import { Foot } from './Foot.tsx';
import { local } from './local.ts';
import './look.css';
import { Panel, PanelButton } from './Panel.tsx';
import { PourTest, Staying } from './PourTest.tsx';
import { SceneView } from './SceneView.tsx';
import { TiltSliders } from './TiltSliders.tsx';
import { Views } from './Views.tsx';

/** Keeps the picture clear of what lies over its edges; opening or closing the panel fits it anew. */
function useInset() {
  const top = useRef<HTMLDivElement>(null);
  const buttons = useRef<HTMLDivElement>(null);
  const bottom = useRef<HTMLDivElement>(null);
  const measure = useCallback((): void => {
    const now = local.inset.value;
    const [above, below] = [top.current?.offsetHeight ?? 0, bottom.current?.offsetHeight ?? 0];
    if (now.top !== above || now.bottom !== below) local.inset.value = { ...now, top: above, bottom: below };
    const { offsetTop = 0, offsetHeight = 0 } = buttons.current ?? {};
    local.buttonsEnd.value = offsetTop + offsetHeight;
  }, []);
  useEffect(() => {
    const watch = new ResizeObserver(measure);
    for (const { current } of [top, buttons, bottom]) if (current) watch.observe(current);
    return () => watch.disconnect();
  }, [measure]);
  const open = local.panel.value;
  useLayoutEffect(() => {
    measure();
    local.handle.value?.settle();
  }, [measure, open]);
  return { top, buttons, bottom };
}

function Controls() {
  const { top, buttons, bottom } = useInset();
  return (
    <>
      <div class="look-top" ref={top}>
        <ColourSwitch />
        <div class="look-right" ref={buttons}>
          <div class="look-wide">
            <Views />
          </div>
          <PanelButton />
        </div>
      </div>
      <Panel />
      <div class="look-bottom">
        <CornerBar />
        <div class="look-floor" ref={bottom}>
          <Foot />
        </div>
      </div>
    </>
  );
}

/** Without a picture there is nothing to turn or to colour; the machine tips and a drop runs in the run profile and in
 * words all the same. */
export function Look() {
  return (
    <div class="look">
      <SceneView />
      {local.fault.value === 'none' ? (
        <div class="look-plain">
          <TiltSliders />
          <Staying />
          <PourTest />
        </div>
      ) : (
        <Controls />
      )}
    </div>
  );
}
