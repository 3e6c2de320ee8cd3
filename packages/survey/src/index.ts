export * from './project-input.ts';
export * from './records.ts';
export * from './settings.ts';
