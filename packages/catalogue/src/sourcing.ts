/** Ways to write a figure with its source, and inches exactly. */
import type { Sourced } from '@runback/job';

export const PRACTICE = 'common practice, no source';
export const MEMORY = 'from memory';
export const NOT_FORMED = 'nothing is formed on this end';

export const figure = (value: number, source: string): Sourced => ({ value, source });

/** Inches in mm: 25.4 as 127/5, so that a binary fraction of an inch gives the double nearest the true length. */
export const inch = (inches: number): number => (inches * 127) / 5;

/** Thousandths of an inch in mm, rounded once. */
export const thou = (thousandths: number): number => (thousandths * 127) / 5000;

/** `inch`, with the source naming what is printed. */
export const inches = (value: number, source: string): Sourced => figure(inch(value), source);

/** Pounds on a square inch in MPa: 4.4482216152605 N on 645.16 mm². */
export const psi = (pounds: number): number => (pounds * 4.4482216152605) / 645.16;

/** Angle whose rise is 1 in `run`, degrees. */
export const oneIn = (run: number): number => (Math.atan(1 / run) * 180) / Math.PI;

/** Expansion as handbooks print it, millionths per K. */
export const perMillion = (value: number, source: string): Sourced => figure(value / 1_000_000, source);
