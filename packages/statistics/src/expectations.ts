/** The room's door checks: what counts as misuse, told as expected … got …. */

/** Throws a RangeError unless every value is a finite number. */
export function expectFinite(values: ArrayLike<number>, name: string): void {
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i])) {
      throw new RangeError(`${name}: expected finite numbers, got ${values[i]} at position ${i}`);
    }
  }
}

/** Throws a RangeError unless two lists are equally long. */
export function expectSameLength(a: ArrayLike<unknown>, b: ArrayLike<unknown>, names: string): void {
  if (a.length !== b.length) {
    throw new RangeError(`${names}: expected equal lengths, got ${a.length} and ${b.length}`);
  }
}

/** Throws a RangeError unless low ≤ value ≤ high. */
export function expectBetween(value: number, low: number, high: number, name: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name}: expected a number from ${low} to ${high}, got ${value}`);
  }
}

/** Throws a RangeError unless 0 < value < 1. */
export function expectOpenFraction(value: number, name: string): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`${name}: expected a number between 0 and 1, both excluded, got ${value}`);
  }
}

/** Throws a RangeError unless the value is a positive finite number. */
export function expectPositive(value: number, name: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`${name}: expected a positive number, got ${value}`);
  }
}

/** Throws a RangeError unless the value is a whole number from low up. */
export function expectWhole(value: number, low: number, name: string): void {
  if (!(Number.isSafeInteger(value) && value >= low)) {
    throw new RangeError(`${name}: expected a whole number from ${low} up, got ${value}`);
  }
}

/** Throws a RangeError unless every value is a finite number from 0 up. */
export function expectNonNegative(values: ArrayLike<number>, name: string): void {
  expectFinite(values, name);
  for (let i = 0; i < values.length; i++) {
    if (Number(values[i]) < 0) {
      throw new RangeError(`${name}: expected numbers from 0 up, got ${values[i]} at position ${i}`);
    }
  }
}
