/** GDAL's programs as outside judges of images (Debian: apt-get install gdal-bin, and python3-gdal for its layout check). */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { temporaryFolder } from '../temporary-folder.ts';

/** What a program prints; its warnings are left aside. */
export function gdal(program: string, args: readonly string[], input?: string): string {
  return execFileSync(program, args, {
    encoding: 'utf8',
    stdio: ['pipe', 'pipe', 'pipe'],
    maxBuffer: 2 ** 30,
    ...(input !== undefined && { input }),
  });
}

/** Whether GDAL is installed; says what to do when not. */
export function hasGdal(): boolean {
  try {
    gdal('gdalinfo', ['--version']);
    return true;
  } catch {
    console.warn('skipped: needs GDAL (Debian: apt-get install gdal-bin)');
    return false;
  }
}

export interface GdalInfo {
  readonly size: readonly [number, number];
  readonly geoTransform?: readonly number[];
  readonly bands: readonly {
    readonly type: string;
    readonly colorInterpretation: string;
    readonly overviews?: readonly { readonly size: readonly [number, number] }[];
    readonly mask?: { readonly flags: readonly string[] };
  }[];
  readonly metadata: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export function gdalInfo(file: string): GdalInfo {
  return JSON.parse(gdal('gdalinfo', ['-json', file]).replace(/:\s*-?nan\b/gi, ': null'));
}

/**
 * Pixel coordinates → WGS 84 longitude and latitude, flat, as GDAL places them: by the image's transform to the ground, then by its
 * coordinate system. (In one go gdaltransform is a tenth of a metre off in some systems.)
 */
export function gdalLonLats(file: string, pixels: readonly (readonly [number, number])[]): number[] {
  const wkt = join(temporaryFolder('wkt'), 'system.wkt');
  writeFileSync(wkt, gdal('gdalsrsinfo', ['-o', 'wkt2', file]));
  const [x, columnX, rowX, y, columnY, rowY] = gdalInfo(file).geoTransform ?? [];
  const ground = pixels.map(([c, r]) => `${x + columnX * c + rowX * r} ${y + columnY * c + rowY * r}`);
  const args = ['-s_srs', wkt, '-t_srs', 'OGC:CRS84', '-output_xy'];
  return gdal('gdaltransform', args, `${ground.join('\n')}\n`)
    .trim()
    .split(/\s+/)
    .map(Number);
}
