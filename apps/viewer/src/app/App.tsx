import { store } from '../store/index.ts';
import { Announcer } from './Announcer.tsx';
import { Dialogs } from './Dialogs.tsx';
import { ChecksFace, DeskFace, LookFace, WordsFace } from './faces.tsx';
import { Later } from './Later.tsx';
import { wide } from './layout.ts';
import { FaceSwitch, TopBar } from './TopBar.tsx';

const sheet = () => import('../sheet/index.ts').then(({ SheetFace }) => SheetFace);
const steps = () => import('../steps/index.ts').then(({ BendSteps }) => BendSteps);

function Face() {
  const face = store.face.value;
  if (!store.worked.value) return <p class="app-wait muted">Opening …</p>;
  if (face === 'sheet') return <Later load={sheet} what="The sheet" />;
  if (face === 'steps') return <Later load={steps} what="The bend steps" />;
  if (wide.value) return <DeskFace />;
  if (face === 'checks') return <ChecksFace />;
  return face === 'words' ? <WordsFace /> : <LookFace />;
}

export function App() {
  const bare = store.face.value === 'steps';
  return (
    <div class={`app ${wide.value ? 'app-wide' : 'app-narrow'} ${bare ? 'app-bare' : ''}`}>
      {!bare && <TopBar />}
      <main class="app-main">
        <Face />
      </main>
      {!bare && !wide.value && <FaceSwitch />}
      <Announcer />
      <Dialogs />
    </div>
  );
}
