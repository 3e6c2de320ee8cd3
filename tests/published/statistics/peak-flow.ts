/** Published values, carried over with their source. */
export const peakFlow = {
  source:
    'Bland and Altman (1986), The Lancet i, 307-310: peak flow by large and mini meter, first readings of 17 subjects; computed with epiR 2.0.57 under R 4.2.2',
  tolerance: 1e-9,
  x: [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427],
  y: [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451],
  expected: {
    rho_c: 0.942742431427484,
    lower95_z: 0.85049187316856,
    upper95_z: 0.978726279170122,
    pearson_r: 0.943279446890946,
    bias_correction_Cb: 0.999430693136343,
    scale_shift_v: 0.972509121336188,
    location_shift_u: 0.0190302500915971,
    mean_x: 450.352941176471,
    mean_y: 452.470588235294,
    var_x_1_over_n: 12732.8166089965,
    var_y_1_over_n: 12042.3667820069,
    cov_1_over_n: 11680.4221453287,
    bland_altman: {
      mean_difference_x_minus_y: -2.11764705882353,
      sd_difference_n_minus_1: 38.7651298736074,
      'loa_lower_1.96': -78.097301611094,
      'loa_upper_1.96': 73.8620074934469,
    },
    rho_c_if_n_minus_1_used: 0.942752467422453,
  },
};
