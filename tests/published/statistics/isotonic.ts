/** Published values, carried over with their source. */
export const isotonic = {
  source:
    "Barlow RE, Bartholomew DJ, Bremner JM, Brunk HD (1972) Statistical Inference under Order Restrictions; de Leeuw J, Hornik K, Mair P (2009) J. Stat. Softw. 32(5); first data vector is the example of R's isoreg help page",
  computed: "scikit-learn 1.2.1 IsotonicRegression; first case also the example of R's isoreg",
  tolerance: 1e-10,
  cases: [
    {
      inputs: {
        y: [1, 0, 4, 3, 3, 5, 4, 2, 0],
        w: null,
      },
      expected: {
        increasing: [0.5, 0.5, 3.0, 3.0, 3.0, 3.0, 3.0, 3.0, 3.0],
        decreasing: [
          2.857142857142857, 2.857142857142857, 2.857142857142857, 2.857142857142857, 2.857142857142857,
          2.857142857142857, 2.857142857142857, 2.0, 0.0,
        ],
      },
    },
    {
      inputs: {
        y: [1, 2, 3, 4],
        w: null,
      },
      expected: {
        increasing: [1.0, 2.0, 3.0, 4.0],
        decreasing: [2.5, 2.5, 2.5, 2.5],
      },
    },
    {
      inputs: {
        y: [4, 3, 2, 1],
        w: null,
      },
      expected: {
        increasing: [2.5, 2.5, 2.5, 2.5],
        decreasing: [4.0, 3.0, 2.0, 1.0],
      },
    },
    {
      inputs: {
        y: [3, 1, 2, 4, 3, 6, 5, 5.5, 9],
        w: null,
      },
      expected: {
        increasing: [2.0, 2.0, 2.0, 3.5, 3.5, 5.5, 5.5, 5.5, 9.0],
        decreasing: [
          4.277777777777778, 4.277777777777778, 4.277777777777778, 4.277777777777778, 4.277777777777778,
          4.277777777777778, 4.277777777777778, 4.277777777777778, 4.277777777777778,
        ],
      },
    },
    {
      inputs: {
        y: [10, 20, 15, 30, 25, 5, 40],
        w: [1, 2, 1, 3, 1, 1, 2],
      },
      expected: {
        increasing: [10.0, 18.333333333333332, 18.333333333333332, 24.0, 24.0, 24.0, 40.0],
        decreasing: [
          24.09090909090909, 24.09090909090909, 24.09090909090909, 24.09090909090909, 24.09090909090909,
          24.09090909090909, 24.09090909090909,
        ],
      },
    },
  ],
};
