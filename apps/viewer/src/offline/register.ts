/** Keeps the viewer on the device, so that it opens without a network. */
import { TAKE_OVER } from './kept.ts';

/**
 * Registers the service worker of a built page, when the browser has such. A page served by `runback view` is not kept:
 * kept, it would hide the job that is served next. Where it cannot be, the viewer works all the same, with a network.
 *
 * @param onWaiting called when a newer version is on the device and waits until every page of this one is closed; the
 * function it is given takes it into use at once and loads this page anew
 */
export function registerOffline(onWaiting: (use: () => void) => void): void {
  const servedHere = document.querySelector('meta[name="runback-served"]') !== null;
  if (!import.meta.env.PROD || servedHere || !isSecureContext || !('serviceWorker' in navigator)) return;
  const begin = (): void => {
    register(onWaiting).catch(() => undefined);
  };
  // After everything else: what is kept for the next time must not delay this one.
  if (document.readyState === 'complete') begin();
  else addEventListener('load', begin, { once: true });
}

async function register(onWaiting: (use: () => void) => void): Promise<void> {
  const at = new URL('sw.js', document.baseURI);
  const registration = await navigator.serviceWorker.register(at, { updateViaCache: 'none' });
  const tell = (): void => {
    const { waiting } = registration;
    // Without a worker in charge this is the first one, and nothing older is in use.
    if (waiting && navigator.serviceWorker.controller) onWaiting(() => use(waiting));
  };
  registration.addEventListener('updatefound', () =>
    registration.installing?.addEventListener('statechange', tell),
  );
  tell();
}

function use(waiting: ServiceWorker): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage(TAKE_OVER);
}
