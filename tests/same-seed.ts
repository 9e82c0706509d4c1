import fc from "fast-check";

/**
 * Random tests draw the same cases in every run, so that a red run is a change and not luck. To look further:
 * `DRYLINE_SEED=7 npm test`.
 */
fc.configureGlobal({ seed: Number(process.env.DRYLINE_SEED ?? 20_260_323) });
