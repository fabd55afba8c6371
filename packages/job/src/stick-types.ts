/** Lines joined end to end, and the stick that goes through them. Millimetres and radians. */
import type { DrainEnd, Vec3 } from '@runback/geometry';
import type { Figure, Material } from './types.ts';

/** What goes through a dipstick tube. */
export interface Stick {
  /** A flat strip; a round cable; stiff links hinged together. */
  readonly kind: 'blade' | 'cable' | 'links';
  /** The end it goes in at. */
  readonly enters: 'A' | 'Z';
  readonly material: Material | null;
  /** Of the blade or a link; diameter of the cable. */
  readonly thickness: number;
  /** Of the blade or a link; `null` for a cable. */
  readonly width: number | null;
  /** Length of one link; `null` for a blade or a cable. */
  readonly link: number | null;
  /** A stiff piece at the end that goes in first. */
  readonly tip: { readonly length: number; readonly thickness: number; readonly width: number | null } | null;
  /** From the finished end it goes in at, out along the tube, to the face its cap seats on. */
  readonly seat: number;
  /** How far its end stands out beyond the far end of the tube when it is seated. */
  readonly beyond: number;
  /** Friction of stick on tube, lowest and highest; `null`: the usual range. */
  readonly friction: { readonly low: Figure; readonly high: Figure } | null;
  /** The room the liquid stands in: upright walls, the middle of its floor and its sizes along and across the machine. */
  readonly pan: { readonly middle: Vec3; readonly size: readonly [number, number] } | null;
  /** What was filled in and where it stood on the stick, from its end. Sorted by litres. */
  readonly fills: readonly { readonly litres: number; readonly at: number }[];
  /** Marks wanted on the stick. */
  readonly levels: readonly { readonly name: string; readonly litres: number }[];
  readonly path: string;
}

/** Lines joined end to end: end Z of each lies on end A of the next. */
export interface Run {
  readonly id: string;
  readonly name: string;
  /** Ids of lines, in order. */
  readonly lines: readonly string[];
  /** Where it drains to: A of the first line, Z of the last, or both. */
  readonly drain: DrainEnd | null;
  readonly stick: Stick | null;
  /** `runs[0]` */
  readonly path: string;
}
