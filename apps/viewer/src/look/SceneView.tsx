import { useEffect, useRef } from 'preact/hooks';
import { store, verdictWords } from '../store/index.ts';
import { hostScene } from './host.ts';
import { sceneKey } from './keys.ts';
import { local } from './local.ts';

function label(): string {
  const line = store.line.value;
  if (!line) return 'Scene';
  return `Scene: ${line.line.name}, ${verdictWords(line)}`;
}

function onKey(event: KeyboardEvent): void {
  const handle = local.handle.value;
  if (handle && sceneKey(event, handle)) event.preventDefault();
}

/** The canvas, or words where there can be no picture. */
export function SceneView() {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => (canvas.current ? hostScene(canvas.current) : undefined), []);
  const fault = local.fault.value;
  return (
    <>
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: it takes keys of its own, which only an application may */}
      <canvas
        ref={canvas}
        class="look-canvas"
        tabIndex={0}
        role="application"
        aria-roledescription="scene"
        aria-label={label()}
        aria-describedby="look-keys"
        hidden={fault === 'none'}
        onKeyDown={onKey}
      />
      <p id="look-keys" class="visually-hidden">
        Arrows look from another side, with Shift they move across. Plus and minus go nearer and farther, F
        fits the line, 1 to 6 look from forward, rear, left, right, above and below. The square brackets move
        the bead, D lets a drop go there and Escape takes it away. With a corner selected, Alt and an arrow
        move it along X or Y, Alt and Page up or down along Z.
      </p>
      {fault && (
        <p class="look-fault" role="alert">
          {fault === 'none'
            ? 'This browser shows no 3D pictures (WebGL is off or missing). The run profile, the words and the sheet work without it.'
            : 'The picture was taken away by the browser. It usually comes back by itself; if not, open the page again. Nothing of the job is lost.'}
        </p>
      )}
    </>
  );
}
