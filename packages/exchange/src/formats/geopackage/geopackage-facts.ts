/** What makes a file an OGC GeoPackage 1.3 (12-128r18): requirements 2 and 11. */

/** `GPKG` */
export const APPLICATION_ID = 0x47504b47;
/** GeoPackage 1.3.0; GDAL 3.6 warns at 1.4. */
export const GEOPACKAGE_VERSION = 10300;

/** EPSG:4326 as well-known text. */
export const WGS84 =
  'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],' +
  'AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,' +
  'AUTHORITY["EPSG","9122"]],AXIS["Latitude",NORTH],AXIS["Longitude",EAST],AUTHORITY["EPSG","4326"]]';
