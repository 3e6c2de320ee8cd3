/**
 * Which datum a text names, and how it is read: as WGS 84 itself, as a datum within about two metres of it (no shift), with
 * a published seven-parameter shift, or not at all. proj4 has no grids, and for a datum it cannot shift (NAD27) it
 * silently leaves the coordinates as they are, tens of metres off; such datums are refused.
 */
import type { DatumReading } from './coordinate-system.ts';
import { tableDatums } from './epsg.ts';

/** The reading of a datum by name, as EPSG, GDAL, ESRI or PROJ write it; undefined: refused. */
export function datumReading(name: string): DatumReading | undefined {
  const key = datumKey(name);
  const wanted = OTHER_NAMES.get(key) ?? key;
  for (const [known, reading] of tableDatums()) {
    if (datumKey(known) === wanted) return reading;
  }
  return undefined;
}

/** Whether the datum is one of the North American Datum of 1927, for which only a grid will do. */
export function needsGrid(name: string): boolean {
  return /^(nad|northamerican(datum)?)(of)?(19)?27/.test(datumKey(name));
}

/** Case, punctuation, the `D_` of ESRI and the word `ensemble` do not tell datums apart. */
function datumKey(name: string): string {
  return name
    .replace(/^D_/i, '')
    .replaceAll('+', 'plus')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
    .replace(/ensemble$/, '');
}

/** Names in other dialects (ESRI .prj files, PROJ's `+datum`) → the key of the name in the EPSG Dataset. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ['wgs84', 'worldgeodeticsystem1984'],
  ['wgs1984', 'worldgeodeticsystem1984'],
  ['nad83', 'northamericandatum1983'],
  ['northamerican1983', 'northamericandatum1983'],
  ['northamerican1983harn', 'nad83highaccuracyreferencenetwork'],
  ['nad1983nsrs2007', 'nad83nationalspatialreferencesystem2007'],
  ['nad19832011', 'nad83nationalspatialreferencesystem2011'],
  ['nad1983pa11', 'nad83nationalspatialreferencesystempa11'],
  ['nad1983ma11', 'nad83nationalspatialreferencesystemma11'],
  ['nad1983cors96', 'nad83continuouslyoperatingreferencestation1996'],
  ['northamerican1983csrs', 'nad83canadianspatialreferencesystem'],
  ['etrs89', 'europeanterrestrialreferencesystem1989'],
  ['etrs1989', 'europeanterrestrialreferencesystem1989'],
  ['rgf1993', 'reseaugeodesiquefrancais1993v1'],
  ['reseaugeodesiquefrancais1993', 'reseaugeodesiquefrancais1993v1'],
  ['gda1994', 'geocentricdatumofaustralia1994'],
  ['gda2020', 'geocentricdatumofaustralia2020'],
  ['nzgd2000', 'newzealandgeodeticdatum2000'],
  ['jgd2000', 'japanesegeodeticdatum2000'],
  ['jgd2011', 'japanesegeodeticdatum2011'],
  ['sirgas2000', 'sistemadereferenciageocentricoparalasamericas2000'],
  ['mexicoitrf1992', 'mexicoitrf92'],
  ['cgcs2000', 'china2000'],
  ['twd1997', 'taiwandatum1997'],
  ['korea2000', 'geocentricdatumofkorea'],
  ['osgb36', 'ordnancesurveyofgreatbritain1936'],
  ['osgb1936', 'ordnancesurveyofgreatbritain1936'],
  ['belge1972', 'reseaunationalbelge1972'],
  ['potsdam', 'deutscheshauptdreiecksnetz'],
  ['hermannskogel', 'militargeographischeinstitut'],
  ['mgi', 'militargeographischeinstitut'],
  ['sjtsk', 'systemoftheunifiedtrigonometricalcadastralnetwork'],
  ['ggrs87', 'greekgeodeticreferencesystem1987'],
  ['ggrs1987', 'greekgeodeticreferencesystem1987'],
  ['hungarian1972', 'hungariandatum1972'],
  ['ire65', 'tm65'],
]);
