/** What a catalogue holds; `@runback/catalogue` is one, a shop may bring its own. Millimetres, degrees for angles as named. */
import type { KeepOffReason } from './types.ts';

export interface Sourced<T = number> {
  readonly value: T;
  readonly source: string;
}

export interface CatalogueMaterial {
  readonly name: string;
  readonly density?: Sourced;
  readonly youngs?: Sourced;
  readonly yield?: Sourced;
  readonly expansion?: Sourced;
  /** Least tensile strength, MPa. */
  readonly strength?: Sourced;
  /** Allowable stress of a piping code near room temperature, MPa. */
  readonly allowable?: Sourced;
  readonly cautions?: readonly string[];
}

export interface CatalogueTube {
  readonly material: string;
  readonly od: number;
  readonly wall: number;
  readonly source: string;
}

export interface CatalogueFitting {
  readonly name: string;
  readonly uses: Sourced;
  readonly bar: Sourced;
  readonly traps: boolean;
  readonly cautions?: readonly string[];
  /** Finished diameters and thickest walls by tube OD. */
  readonly flares?: readonly CatalogueFlare[];
}

/** One row of a flare table. mm. */
export interface CatalogueFlare {
  readonly od: number;
  readonly diameter: readonly [number, number];
  readonly maxWall: number;
  readonly source: string;
}

export interface CatalogueService {
  readonly name: string;
  /** Lives by its fall: a line of it without a drain end is a note. */
  readonly drains?: boolean;
  /** Is filled and bled: air that stays at a high point matters. */
  readonly bleeds?: boolean;
  readonly cautions: readonly string[];
  /** Degrees, used when a line of this service has `drain` without `minSlope`. */
  readonly minSlopeDeg?: Sourced;
  /** Degrees, strictly above, in every attitude. */
  readonly minSlopeTiltedDeg?: Sourced;
  /** mm */
  readonly keepOff?: Partial<Record<KeepOffReason, Sourced>>;
  readonly notes?: readonly { readonly check: string; readonly reason: string }[];
}

/** A liquid at one temperature: kg/m³, mm²/s, mN/m. */
export interface CatalogueFluid {
  readonly name: string;
  readonly density?: Sourced;
  readonly viscosity?: Sourced;
  readonly surfaceTension?: Sourced;
}

/** The least fall a published rule asks of a drain, as the fraction it is: rise over run. */
export interface CatalogueDrainRule {
  readonly name: string;
  readonly fraction: readonly [number, number];
  readonly source: string;
}

export interface ClipSpacing {
  /** Largest OD this row serves, mm. */
  readonly od: number;
  readonly spacing: Sourced;
}

export interface Catalogue {
  readonly materials: Readonly<Record<string, CatalogueMaterial>>;
  readonly tubes: Readonly<Record<string, CatalogueTube>>;
  readonly fittings: Readonly<Record<string, CatalogueFitting>>;
  readonly services: Readonly<Record<string, CatalogueService>>;
  readonly fluids: Readonly<Record<string, CatalogueFluid>>;
  readonly drainRules: Readonly<Record<string, CatalogueDrainRule>>;
  readonly keepOff: Readonly<Record<KeepOffReason, Sourced>>;
  readonly clearance: { readonly self: Sourced; readonly lines: Sourced };
  readonly clipSpacing: readonly ClipSpacing[];
  readonly minRadiusOverOd: Sourced;
  /** Least length left on Z when the tool's tail is not known, mm. */
  readonly spareZ: Sourced;
}
