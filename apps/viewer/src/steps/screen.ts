/** Keeping the screen on and full, where the browser lets us. */

/** Keeps the screen from going dark; again whenever the page comes back. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const take = async (): Promise<void> => {
    try {
      const taken = await navigator.wakeLock?.request('screen');
      if (over) void taken?.release();
      else lock = taken ?? null;
    } catch {
      // Low battery, or not allowed here: the screen goes dark as it always does.
    }
  };
  const back = (): void => {
    if (document.visibilityState === 'visible') void take();
  };
  void take();
  document.addEventListener('visibilitychange', back);
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', back);
    void lock?.release().catch(() => undefined);
  };
}

export const canFill = (): boolean => document.fullscreenEnabled === true;

export async function fillScreen(): Promise<void> {
  try {
    if (document.fullscreenElement) await document.exitFullscreen();
    else await document.documentElement.requestFullscreen();
  } catch {
    // Not allowed here: the window stays as it is.
  }
}
