/** The screen in English: seasons, charts, the plan, the shared project. */

export type PlanningWords = typeof PLANNING_EN;

export const PLANNING_EN = {
  split: {
    toggle: 'Two seasons',
    earlier: (day: string) => `Map of the season before, as of ${day}`,
  },
  charts: {
    figures: 'The figures',
    open: 'Charts',
    title: 'Charts',
    wait: 'Reckoning …',
    noSeason: 'No earlier season was rated, so there is nothing to compare with yet.',
  },
  sharing: {
    title: 'Shared project',
    saved: 'Shared project: every change is saved with it.',
    sending: (count: number) => `${count} change${count === 1 ? '' : 's'} on the way to the project …`,
    waiting: (count: number) =>
      count === 0
        ? 'The server does not answer. Go on working: changes are kept here and sent once it does.'
        : `The server does not answer. ${count} change${count === 1 ? ' is' : 's are'} kept here and sent once it does.`,
    refusedCount: (count: number) =>
      `${count} change${count === 1 ? '' : 's'} refused by the server; kept in this browser only. Undo, or export the layers.`,
    refused: (tree: string, why: string) => `The change of ${tree} was not taken. ${why}`,
    gone: 'The record is no longer there.',
    changedMeanwhile: (tree: string) =>
      `Somebody has just changed ${tree}. Save yours and both are kept until one of you decides.`,
    conflictNow: (tree: string) => `${tree} was changed by somebody else first. Both versions are kept: decide below.`,
    conflicts: (count: number) => `${count} record${count === 1 ? '' : 's'} changed by two people`,
    conflictLead: 'Nothing was overwritten. Compare the two and choose; the other stays in the record’s history.',
    stands: 'As it stands',
    given: (by: string) => `Wanted by ${by}`,
    deleted: 'taken away',
    outlineField: 'outline',
    points: (count: number) => `${count} points`,
    at: 'at the trunk',
    take: 'Take the change',
    drop: 'Leave as it stands',
    showPlace: 'Show on the map',
  },
};
