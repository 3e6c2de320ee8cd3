/** What a regression of shares is given and what it gives. */

import type { Likelihood } from './binomial-deviance.ts';
import type { BinomialLink } from './binomial-link.ts';
import type { Defined } from './defined.ts';
import { expectBetween, expectFinite, expectNonNegative, expectSameLength } from './expectations.ts';

/** One explaining variable: its name and one value per observation. */
export type Term = { readonly name: string; readonly values: ArrayLike<number> };

/** What is to be fitted. */
export type BinomialModel = {
  /** Observed shares, 0–1. */
  readonly shares: ArrayLike<number>;
  readonly terms: readonly Term[];
  readonly link: BinomialLink;
  /** 'quasi-binomial' scales variances by the dispersion found in the residuals; 'binomial' takes it as 1. */
  readonly family: 'binomial' | 'quasi-binomial';
  /** Prior weights from 0 up: trials behind each share, or areas. Default 1. Observations of weight 0 are left out. */
  readonly weights?: ArrayLike<number>;
  /** Known part of the linear predictor. Default 0. */
  readonly offset?: ArrayLike<number>;
  /** Whether a constant term, named (intercept), is fitted first. Default true. */
  readonly intercept?: boolean;
};

/** A fitted model. Lists of coefficients are in the order of `names`, lists of observations in the order given. */
export type BinomialFit = {
  readonly names: readonly string[];
  readonly coefficients: readonly number[];
  /** Covariances of the coefficients: (XᵀWX)⁻¹ times the dispersion. Undefined for quasi-binomial without residual freedom. */
  readonly covariance: Defined<readonly (readonly number[])[]>;
  readonly standardErrors: Defined<readonly number[]>;
  /** Huber–White (HC0) standard errors, valid when the variance is not as assumed. */
  readonly robustStandardErrors: readonly number[];
  readonly fitted: readonly number[];
  readonly predictors: readonly number[];
  readonly deviance: number;
  /** Deviance of the offset with the constant term alone (or of the offset alone, without one). */
  readonly nullDeviance: Defined<number>;
  readonly residualFreedom: number;
  /** Pearson's χ²/residual freedom. */
  readonly dispersion: Defined<number>;
  readonly residuals: {
    readonly deviance: readonly number[];
    readonly pearson: readonly number[];
    readonly response: readonly number[];
  };
  readonly leverages: readonly number[];
  readonly likelihood: Defined<Likelihood>;
  readonly iterations: number;
  readonly family: BinomialModel['family'];
  readonly link: BinomialLink;
};

/** A model laid out for fitting: columns of the design, the constant term first. */
export type Prepared = {
  readonly names: string[];
  readonly columns: readonly ArrayLike<number>[];
  readonly shares: Float64Array;
  readonly weights: Float64Array;
  readonly offset: Float64Array;
};

/** Checks a model and lays it out; RangeError for shares outside 0–1, negative weights, unequal lengths. */
export function prepare(model: BinomialModel): Prepared {
  const rows = model.shares.length;
  const weights = Float64Array.from(model.weights ?? new Array<number>(rows).fill(1));
  const offset = Float64Array.from(model.offset ?? new Array<number>(rows).fill(0));
  expectNonNegative(weights, 'weights');
  expectFinite(offset, 'offset');
  for (let i = 0; i < rows; i++) expectBetween(model.shares[i] as number, 0, 1, 'shares');
  expectSameLength(model.shares, weights, 'shares and weights');
  expectSameLength(model.shares, offset, 'shares and offset');
  for (const term of model.terms) {
    expectFinite(term.values, term.name);
    expectSameLength(model.shares, term.values, `shares and ${term.name}`);
  }
  const constant = (model.intercept ?? true) ? [{ name: '(intercept)', values: new Float64Array(rows).fill(1) }] : [];
  const terms = [...constant, ...model.terms];
  return {
    names: terms.map((term) => term.name),
    columns: terms.map((term) => term.values),
    shares: Float64Array.from(model.shares),
    weights,
    offset,
  };
}
