/** What runs in a line and what it has to stand, as it is written. */
import type { Catalogue } from 'runback';
import type { Answer } from './fall.ts';
import type { Choice } from './tubes.ts';
import type { Written } from './written.ts';

export const NO_FLUID = '';

/** Liquids of the catalogue and the job by name. */
export function fluidChoices(job: Written, catalogue: Catalogue): readonly Choice[] {
  const names = Object.entries(catalogue.fluids).map(([id, { name }]) => [id, name] as const);
  const own = Object.entries(job.fluids ?? {}).map(([id, { name }]) => [id, name ?? id] as const);
  const all = [...new Map([...names, ...own])].map(([value, label]) => ({ value, label }));
  return [{ value: NO_FLUID, label: 'not given' }, ...all];
}

const PLAIN = /^([-+−]?)\s*(\d+\.?\d*|\.\d+)$/u;

function plain(text: string): number | null {
  const match = PLAIN.exec(text);
  if (!match) return null;
  return match[1] === '-' || match[1] === '−' ? -Number(match[2]) + 0 : Number(match[2]);
}

/** A pressure or a flow: a plain number, or text with its unit, which the job reads (and refuses). */
export function readTold(typed: string): Answer<number | string> {
  const text = typed.trim();
  return { ok: true, value: plain(text) ?? text };
}

/** A plain number. */
export function readNumber(typed: string): Answer<number> {
  const value = plain(typed.replace(/\s*°\s*C?\s*$/u, '').trim());
  return value === null
    ? { ok: false, message: 'not a number', expected: 'a plain number like 20' }
    : { ok: true, value };
}

/** How a line is bled, as one choice. */
export const BLEEDS: readonly Choice[] = [
  { value: '', label: 'as its service says' },
  { value: 'both', label: 'at both ends' },
  { value: 'A', label: 'at end A' },
  { value: 'Z', label: 'at end Z' },
];
