import fc from 'fast-check'

/** Properties run on the same inputs everywhere; `FRESH_SEED=1` draws new ones, apart from the ordinary tests. */
if (process.env.FRESH_SEED === undefined) fc.configureGlobal({ seed: 20_261_124 })
