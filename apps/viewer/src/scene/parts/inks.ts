/** The theme as colours of light, with the shades that are mixed from it. */
import { Color } from 'three';
import type { Rgb } from '../shape/mesh.ts';
import type { Palette } from '../shape/paint.ts';
import type { Theme } from '../types.ts';
import type { Surrounding } from './kinds.ts';

export type Inks = Readonly<Record<keyof Theme, Color>>;

export function inksOf(theme: Theme): Inks {
  const entries = Object.entries(theme).map(([name, css]) => [name, new Color(css as string)]);
  return Object.fromEntries(entries) as Inks;
}

export const blend = (a: Color, b: Color, t: number): Color => a.clone().lerp(b, t);

const rgb = ({ r, g, b }: Color): Rgb => [r, g, b];

export const paletteOf = (inks: Inks): Palette => ({
  tube: rgb(inks.tube),
  pass: rgb(inks.pass),
  note: rgb(inks.note),
  fail: rgb(inks.fail),
  ink: rgb(inks.ink),
  pale: rgb(blend(inks.pass, inks.bg, 0.45)),
});

/** Of the sawn face of a tube, and of the bottom of its bore. */
export const endColours = (inks: Inks): { readonly cut: Rgb; readonly dark: Rgb } => ({
  cut: rgb(blend(inks.tubeOther, new Color(1, 1, 1), 0.45)),
  dark: [0.012, 0.012, 0.012],
});

export const tintOf = (inks: Inks, because: Surrounding['because']): Color => inks[because ?? 'fixed'];
