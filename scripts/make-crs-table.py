#!/usr/bin/env python3
"""Writes packages/geometry/src/crs/epsg-table.ts from PROJ's copy of the EPSG Dataset.

Needs PROJ's `projinfo` and its proj.db (Debian: proj-bin, proj-data). Run from the repository's root:

    python3 scripts/make-crs-table.py [/usr/share/proj/proj.db]

Three kinds of systems go in:
  same     datums within about two metres of WGS 84 (continental realisations of ITRF); no shift is applied
  helmert  older national grids, with one published seven-parameter transformation, named by its EPSG code
  refused  every other EPSG system: only its datum and code, so that the refusal can say why
UTM zones of WGS 84, NAD83 and ETRS89 are left out: crs/epsg.ts builds them by rule.
"""
import sqlite3
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

DATABASE = sys.argv[1] if len(sys.argv) > 1 else '/usr/share/proj/proj.db'
TARGET = 'packages/geometry/src/crs/epsg-table.ts'

# EPSG codes of geodetic datums, by region; each is a realisation of ITRF or within two metres of one.
SAME = {
    'United States': [6269, 6152, 6759, 1133, 1116, 1117, 1118, 1211, 1212],
    'Canada': [6140, 1193, 1194, 1195, 1196, 1197, 1198],
    'Mexico': [1042, 1120],
    'Europe': [6258, 6619, 1132, 1312, 1313, 6171, 6173, 1305, 6765, 6761, 6126, 6661, 6180, 1167, 1035, 6659, 1060, 1187],
    'Turkey': [1057],
    'Australia, New Zealand': [6283, 1168, 6167],
    'East Asia': [6612, 1128, 6737, 1043, 1026, 6757],
    'South America': [6674, 6170, 6686, 1062, 6190],
    'World': [6326],
}
# Grids in wide use on older datums: EPSG code of the system -> EPSG code of its transformation to WGS 84.
HELMERT = {
    27700: 1314,
    28992: 4833,
    2056: 1676,
    21781: 1766,
    31466: 1777, 31467: 1777, 31468: 1777, 31469: 1777,
    31254: 1618, 31255: 1618, 31256: 1618, 31257: 1618, 31258: 1618, 31259: 1618, 31287: 1618,
    31370: 15929,
    5514: 1623,
    29902: 1641, 29903: 1954,
    2100: 1272,
    23700: 1448,
}
UTM_BY_RULE = set(range(32601, 32661)) | set(range(32701, 32761)) | set(range(26901, 26924)) | set(range(25828, 25839))
# Methods that proj4js computes the same way as PROJ does.
METHODS = {'tmerc', 'utm', 'lcc', 'aea', 'laea', 'merc', 'sterea', 'somerc', 'omerc', 'krovak', 'stere', 'cea'}
ARCSECONDS = {9104: 1.0, 9113: 0.324}  # arc-second, centesimal second (a third unit stops the run)
TABLE_COLUMNS = 'code, name, method_code, accuracy, tx, ty, tz, rx, ry, rz, rotation_uom_code, scale_difference'


def main():
    database = sqlite3.connect(f'file:{DATABASE}?mode=ro', uri=True)
    versions = dict(database.execute('select key, value from metadata'))
    same = once(same_lines(database))
    helmert = helmert_lines(database)
    taken = {int(line.split('|')[0]) for line in same + helmert if not line.startswith('@')}
    write(versions, same, helmert, refused_lines(database, taken | UTM_BY_RULE))


def same_lines(database):
    lines = []
    for datum in (code for codes in SAME.values() for code in codes):
        name = database.execute("select name from geodetic_datum where auth_name='EPSG' and code=?", (str(datum),)).fetchone()[0]
        with ThreadPoolExecutor(2) as pool:
            systems = [line for line in pool.map(lambda row: same_system(*row), systems_on(database, datum)) if line]
        if systems:
            lines += [f'@{name}', *systems]
    return lines


def once(lines):
    """Parameters that an earlier system has already are replaced by `=` and that system's code."""
    first, out = {}, []
    for line in lines:
        if line.startswith('@'):
            out.append(line)
            continue
        code, name, definition = line.split('|')
        earlier = first.setdefault(definition, code)
        out.append(f'{code}|{name}|{definition if earlier == code else "=" + earlier}')
    return out


def systems_on(database, datum):
    """Geographic (2D) and projected systems, not deprecated, by code."""
    return database.execute(
        """select cast(code as integer) c, name from geodetic_crs
             where auth_name='EPSG' and deprecated=0 and type='geographic 2D' and datum_code=?1
           union select cast(p.code as integer) c, p.name from projected_crs p
             join geodetic_crs g on g.auth_name=p.geodetic_crs_auth_name and g.code=p.geodetic_crs_code
             where p.auth_name='EPSG' and p.deprecated=0 and g.datum_code=?1
           order by c""", (str(datum),)).fetchall()


def same_system(code, name):
    if code in UTM_BY_RULE or code == 3857:
        return None
    definition = parameters(code)
    return f'{code}|{name}|{definition}' if definition else None


def helmert_lines(database):
    lines = []
    for code, operation in HELMERT.items():
        row = database.execute(
            f"select {TABLE_COLUMNS} from helmert_transformation_table where auth_name='EPSG' and code=?", (str(operation),)).fetchone()
        name, datum = database.execute(
            """select p.name, d.name from projected_crs p
                 join geodetic_crs g on g.auth_name=p.geodetic_crs_auth_name and g.code=p.geodetic_crs_code
                 join geodetic_datum d on d.auth_name=g.datum_auth_name and d.code=g.datum_code
               where p.auth_name='EPSG' and p.code=?""", (str(code),)).fetchone()
        header = f'@{datum}|{operation}|{row[3]:g}|{shift(row)}'
        if header not in lines:
            lines.append(header)
        lines.append(f'{code}|{name}|{parameters(code)}')
    return lines


def shift(row):
    """Seven parameters in PROJ's convention (position vector rotation, arc-seconds, parts per million)."""
    method, unit = row[2], row[10]
    if method == 9603:
        return ','.join(f'{value:g}' for value in row[4:7])
    sign = {9606: 1, 9607: -1}[method]
    rotations = [sign * value * arcseconds_in(unit) for value in row[7:10]]
    return ','.join(f'{value:.10g}' for value in [*row[4:7], *rotations, row[11]])


def arcseconds_in(unit):
    if unit == 9109:  # microradian
        return 1e-6 * 180 * 3600 / 3.141592653589793
    return ARCSECONDS[unit]


def parameters(code):
    """PROJ's parameters without what is the same for all; None when proj4js cannot do the method or the axes."""
    run = subprocess.run(['projinfo', f'EPSG:{code}', '-o', 'PROJ', '-q'], capture_output=True, text=True, check=False)
    words = run.stdout.strip().split()
    parts = dict(word[1:].partition('=')[::2] for word in words)
    if run.returncode or 'axis' in parts or 'pm' in parts:
        return None
    if parts.get('proj') not in METHODS | {'longlat'}:
        return None
    if parts.pop('datum', None) in ('NAD83', 'NZGD2000'):
        parts['ellps'] = 'GRS80'
    if not {'ellps', 'a', 'R'} & parts.keys():
        parts['ellps'] = 'WGS84'
    for same_for_all in ('towgs84', 'no_defs', 'type', 'wktext'):
        parts.pop(same_for_all, None)
    if parts.get('ellps') == 'GRS80':
        del parts['ellps']
    if parts.get('units') == 'm':
        del parts['units']
    return ' '.join(f'{key}={value}' if value else key for key, value in parts.items())


def refused_lines(database, taken):
    rows = database.execute(
        """select d.name, cast(g.code as integer) from geodetic_crs g
             join geodetic_datum d on d.auth_name=g.datum_auth_name and d.code=g.datum_code
             where g.auth_name='EPSG' and g.type='geographic 2D'
           union select d.name, cast(p.code as integer) from projected_crs p
             join geodetic_crs g on g.auth_name=p.geodetic_crs_auth_name and g.code=p.geodetic_crs_code
             join geodetic_datum d on d.auth_name=g.datum_auth_name and d.code=g.datum_code
             where p.auth_name='EPSG' order by 1, 2""").fetchall()
    handled = {database.execute("select name from geodetic_datum where auth_name='EPSG' and code=?", (str(code),)).fetchone()[0]
               for codes in SAME.values() for code in codes}
    by_datum = {}
    for name, code in rows:
        if code not in taken and name not in handled:
            by_datum.setdefault(name, []).append(code)
    return [f'{name}|{ranges(codes)}' for name, codes in sorted(by_datum.items())]


def ranges(codes):
    runs = []
    for code in sorted(set(codes)):
        if runs and code == runs[-1][1] + 1:
            runs[-1][1] = code
        else:
            runs.append([code, code])
    return ','.join(str(a) if a == b else f'{a}-{b}' for a, b in runs)


def write(versions, same, helmert, refused):
    head = f"""// Made by scripts/make-crs-table.py; do not edit by hand. Source: EPSG Dataset {versions['EPSG.VERSION']} ({versions['EPSG.DATE']}),
// © IOGP, as carried by PROJ {versions['PROJ.VERSION']} (proj.db). Parameters are PROJ's, without the
// leading plus, on GRS 80 unless they say otherwise; `=code` means the parameters of that system.

/** `@datum` opens a group; then `code|name|parameters`. No shift: these datums lie within about two metres of WGS 84. */
"""
    parts = [
        head, 'export const SAME_AS_WGS84 = `\n', '\n'.join(same), '\n`;\n\n',
        '/** `@datum|EPSG code of the transformation|its stated accuracy, m|towgs84` opens a group; then as above. */\n',
        'export const WITH_HELMERT = `\n', '\n'.join(helmert), '\n`;\n\n',
        '/** `datum|codes`: systems on datums that need a shift which is not applied here. */\n',
        'export const REFUSED = `\n', '\n'.join(refused), '\n`;\n']
    with open(TARGET, 'w', encoding='utf-8') as file:
        file.write(''.join(parts))


if __name__ == '__main__':
    main()
