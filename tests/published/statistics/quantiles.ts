/** Published values, carried over with their source. */
export const quantileTypes = {
  source:
    'Hyndman and Fan (1996), The American Statistician 50, 361-365; computed with R 4.2.2 quantile(type = 1 to 9)',
  tolerance: 1e-12,
  x: [1, 3, 4, 8, 15, 16, 23, 42],
  probs: [0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975],
  expected: {
    type1: [1, 1, 3, 8, 16, 42, 42],
    type2: [1, 1, 3.5, 11.5, 19.5, 42, 42],
    type3: [1, 1, 3, 8, 16, 23, 42],
    type4: [1, 1, 3, 8, 16, 26.8, 38.2],
    type5: [1, 1.6, 3.5, 11.5, 19.5, 36.3, 42],
    type6: [1, 1, 3.25, 11.5, 21.25, 42, 42],
    type7: [1.35, 2.4, 3.75, 11.5, 17.75, 28.7, 38.675],
    type8: [1, 1.33333333333333, 3.41666666666667, 11.5, 20.0833333333333, 38.8333333333333, 42],
    type9: [1, 1.4, 3.4375, 11.5, 19.9375, 38.2, 42],
  },
};
