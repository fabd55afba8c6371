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

  dispose(): void {
    for (const { material } of this.made.values()) {
      material.map?.dispose();
      material.dispose();
    }
    this.made.clear();
  }
}

function draw(glyph: Glyph, inks: Inks): Picture {
  const [width, height] = sizeOf(glyph);
  const canvas = new OffscreenCanvas(width * SHARP, height * SHARP);
  const pen = canvas.getContext('2d')!;
  pen.scale(SHARP, SHARP);
  pen.lineJoin = 'round';
  paint(pen, glyph, { width, height, css: (name) => css(inks[name]) });
  const map = new CanvasTexture(canvas);
  map.colorSpace = SRGBColorSpace;
  map.minFilter = LinearFilter;
  map.generateMipmaps = false;
  const material = new SpriteMaterial({ map, transparent: true, depthTest: false, depthWrite: false });
  return { material, width, height, solid: glyph.kind === 'corner' ? CORNER_SOLID : 1 };
}

const css = (colour: Color): string => `#${colour.getHexString()}`;

function sizeOf(glyph: Glyph): readonly [number, number] {
  switch (glyph.kind) {
    case 'end':
      return [24, 24];
    case 'tag':
      return [Math.ceil(textWidth(glyph.text)) + 14, HEIGHT];
    case 'word':
      return [Math.ceil(textWidth(glyph.text)) + 8, HEIGHT];
    case 'corner':
      return [20, 20];
    case 'drop':
      return [20, 26];
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
