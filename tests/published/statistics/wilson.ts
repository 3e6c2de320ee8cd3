/** Published values, carried over with their source. */
export const wilson = {
  source:
    'Wilson (1927), JASA 22, 209-212; cases of Newcombe (1998), Statistics in Medicine 17, 857-872, Table I (4-digit limits there from memory); computed with R 4.2.2 prop.test',
  tolerance: 1e-10,
  cases: [
    {
      inputs: {
        x: 81,
        n: 263,
        conf: 0.95,
      },
      expected: {
        lower: 0.255288519878274,
        upper: 0.3662095769828,
        with_continuity_correction: [0.253508682295185, 0.368176201043004],
      },
    },
    {
      inputs: {
        x: 15,
        n: 148,
        conf: 0.95,
      },
      expected: {
        lower: 0.0623863995307363,
        upper: 0.160487241723308,
        with_continuity_correction: [0.0597782084284981, 0.164449779364837],
      },
    },
    {
      inputs: {
        x: 0,
        n: 20,
        conf: 0.95,
      },
      expected: {
        lower: 0,
        upper: 0.161125158052819,
        with_continuity_correction: [0, 0.200453345013487],
      },
    },
    {
      inputs: {
        x: 1,
        n: 29,
        conf: 0.95,
      },
      expected: {
        lower: 0.00611321429276266,
        upper: 0.171755218793203,
        with_continuity_correction: [0.00180264021327967, 0.196281751009759],
      },
    },
    {
      inputs: {
        x: 3,
        n: 10,
        conf: 0.95,
      },
      expected: {
        lower: 0.107791267406301,
        upper: 0.603221852538855,
        with_continuity_correction: [0.0809478242099945, 0.646329276488831],
      },
    },
    {
      inputs: {
        x: 10,
        n: 10,
        conf: 0.95,
      },
      expected: {
        lower: 0.722467200137111,
        upper: 1,
        with_continuity_correction: [0.655462781693077, 1],
      },
    },
    {
      inputs: {
        x: 50,
        n: 100,
        conf: 0.95,
      },
      expected: {
        lower: 0.403831530365996,
        upper: 0.596168469634004,
        with_continuity_correction: [0.403831530365996, 0.596168469634004],
      },
    },
  ],
};
