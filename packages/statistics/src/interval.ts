/** The interval every estimate of this room reports. */

/** Two limits in the units of the estimate, and the confidence (0–1) with which the method covers the true value. */
export type Interval = { readonly lower: number; readonly upper: number; readonly confidence: number };
