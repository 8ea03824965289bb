/**
 * Figures of the reference methods on the open data, from the README beside them (tables "Whole day", "Rest of the day",
 * "Sell-outs", "Run-out times"), made with general statistics libraries (R forecast, Python scipy).
 */
export const WHOLE_DAY = {
  level_nb: { wape: 0.381, mase: 0.781, pinAvg: 0.685, pinScaled: 0.3009 },
  mix: { wape: 0.388, mase: 0.783, pinAvg: 0.7022, pinScaled: 0.3049 },
  tbats: { wape: 0.389, mase: 0.793, pinAvg: 0.7069, pinScaled: 0.3104 },
  ets: { wape: 0.403, mase: 0.818, pinAvg: 0.7302, pinScaled: 0.319 },
  autoarima: { wape: 0.417, mase: 0.829, pinAvg: 0.7444, pinScaled: 0.3222 },
  wdmean4_pois: { wape: 0.401, mase: 0.809, pinAvg: 0.7551, pinScaled: 0.3372 },
  wd_emp8: { wape: 0.416, mase: 0.843, pinAvg: 0.7662, pinScaled: 0.343 },
  tsb: { wape: 0.429, mase: 0.823, pinAvg: 0.7776, pinScaled: 0.3211 },
  snaive: { wape: 0.497, mase: 0.983, pinAvg: 0.8566, pinScaled: 0.372 },
} as const

export const REST = {
  '10:00': {
    rest_gp_store: { wape: 0.417, mase: 0.762, pinAvg: 0.6462, pinScaled: 0.2877 },
    rest_gamma_poisson: { wape: 0.416, mase: 0.761, pinAvg: 0.6511, pinScaled: 0.2896 },
    rest_prior_only: { wape: 0.408, mase: 0.752, pinAvg: 0.6527, pinScaled: 0.2895 },
    rest_profile_scale: { wape: 0.968, mase: 1.624, pinAvg: 2.1693, pinScaled: 0.912 },
  },
  '12:00': {
    rest_gp_store: { wape: 0.489, mase: 0.62, pinAvg: 0.5458, pinScaled: 0.2391 },
    rest_gamma_poisson: { wape: 0.487, mase: 0.619, pinAvg: 0.5432, pinScaled: 0.2382 },
    rest_prior_only: { wape: 0.481, mase: 0.618, pinAvg: 0.531, pinScaled: 0.2358 },
    rest_profile_scale: { wape: 0.652, mase: 0.821, pinAvg: 1.0063, pinScaled: 0.4644 },
  },
} as const

/** Days cut by a sell-out. */
export const SOLD_OUT = {
  A: {
    sales_seen: { bias: -0.524, itemBias: 0.528, mae: 5.093, rmse: 8.757 },
    profile: { bias: -0.078, itemBias: 0.137, mae: 2.909, rmse: 4.456 },
    drop_cut_days: { bias: 0.087, itemBias: 0.136, mae: 3.042, rmse: 4.706 },
    gamma_poisson_em: { bias: -0.045, itemBias: 0.057, mae: 2.02, rmse: 3.211 },
  },
  B: {
    sales_seen: { bias: -0.302, itemBias: 0.354, mae: 3.356, rmse: 5.168 },
    profile: { bias: 0.168, itemBias: 0.34, mae: 2.97, rmse: 5.368 },
    drop_cut_days: { bias: -0.145, itemBias: 0.199, mae: 2.537, rmse: 3.799 },
    gamma_poisson_em: { bias: -0.022, itemBias: 0.04, mae: 1.53, rmse: 2.269 },
  },
} as const

export const RUN_OUT = {
  profile_gamma: { hitRate: 0.91, falseAlarm: 0.809, maeMinutes: 81.4, pinballMinutes: 25.42, inside80: 0.859 },
  constant_rate: { hitRate: 0.4, falseAlarm: 0.298, maeMinutes: 154.3, pinballMinutes: 56.76, inside80: 0.38 },
} as const
