import './style/tokens.css';
import './style/parts.css';
import './app/app.css';
import { render } from 'preact';
import { App } from './app/App.tsx';
import { receiveDrops } from './app/drop.ts';
import { bindKeys } from './app/keys.ts';
import { wide } from './app/layout.ts';
import { followTheme } from './app/theme.ts';
import { registerOffline } from './offline/index.ts';
import { startStore, store } from './store/index.ts';

followTheme(store);
bindKeys(store);
receiveDrops(store);
// At a bench with a phone in hand, what is wrong and what to do next come first.
if (!wide.value) store.setFace('checks');
render(<App />, document.getElementById('app')!);
void startStore().catch((error: unknown) =>
  store.say(`It could not be opened: ${error instanceof Error ? error.message : String(error)}`, 'fault'),
);
registerOffline(() => store.say('A newer Runback is ready: close and open this page to use it.'));
