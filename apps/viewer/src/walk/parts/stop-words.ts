/** What a visit says, in a line. */
import type { Visit } from '@crownfall/exchange';
import type { WalkWords } from '../../language/en-walk.ts';
import type { Fields } from '../pack/block-pack.ts';
import type { Stop } from '../stop/stop.ts';
import { visitOfStop } from '../stop/visit-of-stop.ts';
import { pctOf } from './quantities-shown.ts';

export const stopLine = (stop: Stop, words: WalkWords): string => visitLine(visitOfStop(stop, ''), words);

/** Example: `browned 40 % · galls heavy · frass`. */
export function visitLine({ details = {}, note }: Visit, words: WalkWords): string {
  const { summary, tree, queue } = words;
  const rows = (name: string): readonly Fields[] => (Array.isArray(details[name]) ? (details[name] as Fields[]) : []);
  const host = (details.wrong_species as Fields | undefined)?.host;
  const parts = [
    ...(details.not_found === true ? [summary.notFound] : []),
    ...(details.new_tree ? [summary.newTree] : []),
    ...(host === undefined ? [] : [summary.host(String(host))]),
    ...rows('ratings').flatMap((row) => ratingParts(row, words)),
    ...rows('bloom').flatMap(({ bbch, larvae_in_galls, bees_at_flowers }) => [
      ...(typeof bbch === 'number' ? [summary.bbch(bbch)] : []),
      ...(larvae_in_galls === 'yes' ? [summary.larvae] : []),
      ...(bees_at_flowers === 'yes' ? [summary.bees] : []),
    ]),
    ...rows('quadrats').map((row) => summary.quadrat(pctOf(Number(row.stained_pct)))),
    ...(rows('photos').length > 0 ? [tree.photos(rows('photos').length)] : []),
    ...(note ? [note] : []),
  ];
  return parts.length === 0 ? queue.nothingSaid : parts.join(' · ');
}

/** The parts of a row of the ratings layer. */
export function ratingParts(row: Fields, { summary, rate }: WalkWords): readonly string[] {
  const { browned_pct, defoliated_pct, gall_load, cause } = row;
  const galls = (rate.gallLoad as Readonly<Record<string, string>>)[String(gall_load)];
  const falls = (rate.causes as Readonly<Record<string, string>>)[String(cause)];
  return [
    ...(isNumber(browned_pct) ? [summary.browned(pctOf(Number(browned_pct)))] : []),
    ...(isNumber(defoliated_pct) ? [summary.defoliated(pctOf(Number(defoliated_pct)))] : []),
    ...(galls === undefined ? [] : [summary.galls(galls)]),
    ...(falls === undefined || cause === 'none' ? [] : [summary.cause(falls)]),
  ];
}

/** Tables hold numbers as text. */
const isNumber = (value: unknown): boolean =>
  value !== null && value !== undefined && String(value).trim() !== '' && Number.isFinite(Number(value));
