/** The scene with its own controls over it. */
import { useEffect, useRef } from 'preact/hooks';
import { ColourSwitch } from './ColourSwitch.tsx';
import { CornerBar } from './CornerBar.tsx';
import { Foot } from './Foot.tsx';
import { local } from './local.ts';
import './look.css';
import { Panel, PanelButton } from './Panel.tsx';
import { SceneView } from './SceneView.tsx';
import { Views } from './Views.tsx';

/** Keeps the picture clear of what lies over its edges. */
function useInset() {
  const top = useRef<HTMLDivElement>(null);
  const bottom = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const measure = (): void => {
      const now = local.inset.value;
      const [above, below] = [top.current?.offsetHeight ?? 0, bottom.current?.offsetHeight ?? 0];
      if (now.top !== above || now.bottom !== below)
        local.inset.value = { ...now, top: above, bottom: below };
    };
    const watch = new ResizeObserver(measure);
    if (top.current) watch.observe(top.current);
    if (bottom.current) watch.observe(bottom.current);
    measure();
    return () => watch.disconnect();
  }, []);
  return { top, bottom };
}

function Controls() {
  const { top, bottom } = useInset();
  return (
    <>
      <div class="look-top" ref={top}>
        <ColourSwitch />
        <div class="look-right">
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

/** Without a picture there is nothing to turn or to colour. */
export function Look() {
  return (
    <div class="look">
      <SceneView />
      {local.fault.value !== 'none' && <Controls />}
    </div>
  );
}
