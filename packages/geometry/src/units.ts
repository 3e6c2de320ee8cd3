/**
 * Units as types: a number that has passed a package door carries its unit, so that metres are never added to feet.
 * Inside kernels plain numbers with a suffix are used (`areaM2`, `driftM`).
 */
declare const unit: unique symbol;

type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

export type Metres = Quantity<'m'>;
export type SquareMetres = Quantity<'m2'>;
/** A share, 0 to 1. Per cent appears only on screens, sheets and columns named `…_pct`. */
export type Fraction = Quantity<'1'>;
/** Bearings are clockwise from north. */
export type Degrees = Quantity<'deg'>;

export const metres = (value: number): Metres => value as Metres;
export const squareMetres = (value: number): SquareMetres => value as SquareMetres;
export const fraction = (value: number): Fraction => value as Fraction;
export const degrees = (value: number): Degrees => value as Degrees;

/** The international foot, exactly 0.3048 m. The US survey foot (1200/3937 m) occurs only inside coordinate systems. */
export const METRES_PER_FOOT = 0.3048;
