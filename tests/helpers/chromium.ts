/** The Chromium of the machine, as a person's browser. */
import { type Browser, type BrowserContext, chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

export const openChromium = (): Promise<Browser> =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS });

/** One that keeps what it is told in `folder`, as a person's does from one day to the next. */
export const openPersistent = (folder: string): Promise<BrowserContext> =>
  chromium.launchPersistentContext(folder, { executablePath: '/usr/bin/chromium', args: FLAGS });
