/** The charts in English; loaded with them. */

export type ChartWords = typeof CHARTS_EN;

export const CHARTS_EN = {
  stained: 'stained pavement',
  spread: (half: number, all: number) => `${half} of ${all} blocks hold half of the stain`,
  spreadAbout: 'Share of the stained pavement in the most stained blocks, added up from the greatest.',
  spreadAcross: 'blocks, most stained first',
  spreadUp: 'share of the stain, %',
  change: (then: string, now: string) => `Blocks that changed most, ${then} to ${now}`,
  changeAbout: (count: number) => `${count} blocks; hollow before, filled now.`,
  changeNote: (then: string, now: string) => `Hollow: ${then}; filled: ${now}. On today’s crowns and pavement.`,
  fit: (count: number, k: string) => `${count} measured plots against the fit, ${k}`,
  k: (k: string, lower: string, upper: string) => `k = ${k} (95 % range ${lower} to ${upper})`,
  fitAbout: 'Each point is a quadrat; points on the line are predicted exactly.',
  fitted: 'fitted stained share, %',
  observed: 'observed stained share, %',
  asFitted: 'as fitted',
  quadrat: 'quadrat',
  noFit: (count: number) =>
    `${count} quadrats measured this season: too few under rated crowns to fit the dose coefficient. Measure plots on the pavement below rated crowns.`,
};
