import { expect, test } from 'vitest';
import { storedName } from './read-project.ts';

test('projects in one file keep their figures apart; a folder has one project', () => {
  expect(storedName('towns/a.gpkg', 'calibration.json')).toBe('a.calibration.json');
  expect(storedName('towns/b.GPKG', 'raters.json')).toBe('b.raters.json');
  expect(storedName('towns/c', 'calibration.json')).toBe('calibration.json');
  expect(storedName('towns/c/project.json', 'calibration.json')).toBe('calibration.json');
});
