/**
 * The kinds of field a layer may have, as JSON Schema (2020-12) fragments. `x-unit` carries the unit that the field's name
 * also says; limits are those of the thing measured, not of taste.
 */
import { Type } from 'typebox';

export interface NumberLimits {
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
}

/** An optional number with its unit and limits. */
export const measure = (unit: string, description: string, limits: NumberLimits = {}) =>
  Type.Optional(Type.Number({ description, 'x-unit': unit, ...limits }));

/** An optional whole number. */
export const count = (description: string, limits: NumberLimits = {}) =>
  Type.Optional(Type.Integer({ description, ...limits }));

/** An optional piece of text. */
export const text = (description: string) => Type.Optional(Type.String({ description }));

/** An optional day, ISO `YYYY-MM-DD`. */
export const day = (description: string) => Type.Optional(Type.String({ format: 'date', description }));

/** An optional word of a fixed list. */
export const word = <Words extends readonly string[]>(words: Words, description: string) =>
  Type.Optional(Type.Enum([...words] as unknown as [...Words], { description }));
