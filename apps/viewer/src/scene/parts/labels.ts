/** Small pictures for marks and letters, each drawn once for a theme. */
import { CanvasTexture, type Color, LinearFilter, SpriteMaterial, SRGBColorSpace } from 'three';
import { FONT, type Glyph, paint } from './glyphs.ts';
import type { Inks } from './inks.ts';

export interface Picture {
  readonly material: SpriteMaterial;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Part of it that no other mark may cover. */
  readonly solid: number;
}

const SHARP = 3;
/** Amounts change with every move of the tilt: no more pictures of them are kept than this, and those shown. */
const MOST_AMOUNTS = 24;
const HEIGHT = 20;
/** The sheet of a corner is larger than its mark. */
const CORNER_SOLID = 0.5;

export class Labels {
  private readonly made = new Map<string, Picture>();
  private readonly inks: Inks;

  constructor(inks: Inks) {
    this.inks = inks;
  }

  of(glyph: Glyph): Picture {
    const key = JSON.stringify(glyph);
    const known = this.made.get(key);
    if (known) return known;
    const picture = draw(glyph, this.inks);
    this.made.set(key, picture);
    return picture;
  }

  /** Lets go of amounts that are no longer shown, once there are many. */
  keep(shown: readonly Glyph[]): void {
    const amounts = [...this.made.keys()].filter((key) => isAmount(key));
    if (amounts.length <= MOST_AMOUNTS) return;
    const wanted = new Set(shown.map((glyph) => JSON.stringify(glyph)));
    for (const key of amounts) if (!wanted.has(key)) this.letGo(key);
  }

  private letGo(key: string): void {
    const { material } = this.made.get(key)!;
    material.map?.dispose();
    material.dispose();
    this.made.delete(key);
  }

  dispose(): void {
    for (const key of [...this.made.keys()]) this.letGo(key);
  }
}

function draw(glyph: Glyph, inks: Inks): Picture {
  const times = glyph.kind === 'drop' || glyph.kind === 'bubble' ? glyph.times : 1;
  const [plainWidth, plainHeight] = sizeOf(glyph);
  const [width, height] = [Math.round(plainWidth * times), Math.round(plainHeight * times)];
  const canvas = new OffscreenCanvas(width * SHARP, height * SHARP);
  const pen = canvas.getContext('2d')!;
  pen.scale(SHARP * times, SHARP * times);
  pen.lineJoin = 'round';
  paint(pen, glyph, { width: plainWidth, height: plainHeight, css: (name) => css(inks[name]) });
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  map.minFilter = LinearFilter;
  map.generateMipmaps = false;
  const material = new SpriteMaterial({ map, transparent: true, depthTest: false, depthWrite: false });
  return { material, width, height, solid: glyph.kind === 'corner' ? CORNER_SOLID : 1 };
}

const isAmount = (key: string): boolean => (JSON.parse(key) as Glyph).kind === 'amount';

const css = (colour: Color): string => `#${colour.getHexString()}`;

function sizeOf(glyph: Glyph): readonly [number, number] {
  switch (glyph.kind) {
    case 'end':
      return [24, 24];
    case 'tag':
      return [Math.ceil(textWidth(glyph.text)) + 14, HEIGHT];
    case 'word':
    case 'amount':
      return [Math.ceil(textWidth(glyph.text)) + 8, HEIGHT];
    case 'corner':
      return [20, 20];
    case 'drop':
      return [20, 26];
    case 'running':
      return [30, 30];
    case 'bubble':
      return [22, 22];
    case 'ring':
      return [40, 40];
  }
}

function textWidth(text: string): number {
  const pen = new OffscreenCanvas(1, 1).getContext('2d')!;
  pen.font = FONT;
  return pen.measureText(text).width;
}
