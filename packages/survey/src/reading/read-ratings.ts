/** Ratings: who saw what on which tree, when. */
import type { RawLayer } from '../project-input.ts';
import type { Cause, Confidence, GallLoad, Rating, SeverityInterval } from '../records.ts';
import type { ClassScale } from '../scales/class-scale.ts';
import { severityOfClass, severityOfPercent } from '../scales/class-scale.ts';
import { scalesOf } from '../scales/scales-of.ts';
import type { Settings } from '../settings.ts';
import type { KnownIds } from './known-ids.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { readNumber } from './number-text.ts';
import { present } from './present-fields.ts';
import type { RowReader } from './row-reader.ts';

type Row = RowReader<'ratings'>;

/** The rater of suggestions made from an aerial image. */
const IMAGERY = 'imagery';

/**
 * Reads the ratings. Left out are rows of unknown trees, without a readable date, or with a share outside 0–100 %; a class
 * is read on its scale (published, or the project's own). An unknown cause is `unknown`, which stains nothing. What imagery
 * suggests (rater `imagery`) is left out until a person has put a name into `confirmed_by`.
 */
export function readRatings(layer: RawLayer | undefined, settings: Settings, trees: KnownIds): LayerReading<Rating> {
  return readLayer('ratings', layer, ratingReader(settings, trees));
}

/** Reads one row; undefined when it gives no rating. */
export function ratingReader(settings: Settings, trees: Pick<KnownIds, 'has' | 'similar'>) {
  const scales = scalesOf(settings);
  return (row: Row): Rating | undefined => {
    const treeId = row.text('tree_id', 'needed');
    const ratedOn = row.date('rated_on', 'needed');
    if (treeId !== undefined && !trees.has(treeId)) {
      row.spoil('rating-of-unknown-tree', { got: treeId, similar: trees.similar(treeId) }, 'tree_id');
    }
    const browned = brownedOf(row, scales);
    const defoliated = shareOf(row, 'defoliated_pct', 'optional');
    const diagnosis = diagnosisOf(row);
    if (treeId === undefined || ratedOn === undefined || row.spoiled) return undefined;
    const rater = raterOf(row);
    const confirmedBy = row.text('confirmed_by');
    if (rater.toLowerCase() === IMAGERY && confirmedBy === undefined) {
      row.tally('rating-unconfirmed', 'note/left_out', {}, 'confirmed_by');
      return undefined;
    }
    if (browned === undefined && defoliated === undefined) tellNoFigure(row, diagnosis);
    return {
      treeId,
      ratedOn,
      rater,
      ...present({ browned, defoliated }),
      ...diagnosis,
      ...present({ confidence: row.word<Confidence>('confidence'), note: row.text('note'), confirmedBy }),
      extra: row.extra(),
    };
  };
}

function raterOf(row: Row): string {
  const rater = row.text('rater');
  if (rater === undefined) row.tally('field-missing', 'note/assumed', { read_as: 'unknown' }, 'rater');
  return rater ?? 'unknown';
}

function shareOf(row: Row, field: 'browned_pct' | 'defoliated_pct', need: 'needed' | 'optional') {
  if (readNumber(row.feature.properties[field], '%') === 'missing') return undefined;
  const percent = row.number(field, need);
  return percent === undefined ? undefined : severityOfPercent(percent);
}

function brownedOf(row: Row, scales: ReadonlyMap<string, ClassScale>): SeverityInterval | undefined {
  const percent = shareOf(row, 'browned_pct', 'needed');
  const byClass = classOf(row, scales);
  if (percent !== undefined && byClass !== undefined && (percent.share < byClass.lo || percent.share > byClass.hi)) {
    const facts = {
      got: percent.share * 100,
      class: row.text('class') ?? '',
      scale: byClass.scale,
      expected: `${byClass.lo * 100}–${byClass.hi * 100} %`,
    };
    row.find('class-and-percent-disagree', 'warning/kept', facts, 'browned_pct');
  }
  return percent ?? byClass;
}

function classOf(row: Row, scales: ReadonlyMap<string, ClassScale>): SeverityInterval | undefined {
  const code = row.text('class');
  if (code === undefined) return undefined;
  const name = row.text('scale');
  if (name === undefined) {
    row.spoil('field-missing', {}, 'scale');
    return undefined;
  }
  if (name.toLowerCase() === 'percent') return percentClass(row, code);
  const scale = scales.get(name.toLowerCase());
  if (scale === undefined) {
    row.spoil('unknown-word', { got: name, valid: ['percent', ...scales.keys()].join(', ') }, 'scale');
    return undefined;
  }
  const severity = severityOfClass(scale, code);
  if (severity === undefined) {
    row.spoil('unknown-word', { got: code, valid: scale.classes.map((one) => one.code).join(', ') }, 'class');
  }
  return severity;
}

function percentClass(row: Row, code: string): SeverityInterval | undefined {
  const reading = readNumber(code, '%');
  if (reading === 'missing' || reading === 'unreadable')
    row.spoil('field-not-a-number', { got: code, unit: '%' }, 'class');
  else if (reading.value < 0 || reading.value > 100) {
    row.spoil('value-out-of-range', { got: reading.value, expected: '0–100 %' }, 'class');
  } else return severityOfPercent(reading.value);
  return undefined;
}

type Diagnosis = Pick<Rating, 'cause' | 'gallLoad' | 'evidence'>;

function diagnosisOf(row: Row): Diagnosis {
  const cause = row.word<Cause>('cause', 'unknown') ?? 'unknown';
  const gallLoad = row.word<GallLoad>('gall_load');
  const evidence = row.text('evidence');
  if (cause === 'frass' && gallLoad === 'none') {
    row.find('rating-contradiction', 'warning/kept', { cause, gall_load: gallLoad }, 'gall_load');
  } else if (cause === 'frass' && gallLoad === undefined && evidence === undefined) {
    row.find('cause-without-evidence', 'warning/kept', { cause }, 'evidence');
  } else if (cause === 'unknown' && gallLoad !== undefined && gallLoad !== 'none') {
    row.find('galls-without-cause', 'note/kept', { gall_load: gallLoad }, 'cause');
  }
  return { cause, ...present({ gallLoad, evidence }) };
}

function tellNoFigure(row: Row, diagnosis: Diagnosis): void {
  if (diagnosis.cause === 'unknown' && diagnosis.gallLoad === undefined) row.spoil('rating-without-figure', {});
  else row.find('rating-without-figure', 'note/kept', {});
}
