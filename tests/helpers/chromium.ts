/** The Chromium of the machine, as a person's browser. */
import { type Browser, chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

export const openChromium = (): Promise<Browser> =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS });
