/** The words of every finding in English. */
import type { Catalogue } from './words.ts';

export const EN: Catalogue = {
  messages: {
    'not-json': {
      what: 'The file is not valid JSON[ near line {line}][: {problem}]',
      remedy: 'Export it again, or open it in an editor that marks JSON errors.',
    },
    'file-truncated': {
      what: 'The file ends too soon[, after {bytes} bytes][: {problem}]',
      remedy: 'It was probably cut off while copying. Copy or export it again.',
    },
    'file-missing': {
      what: 'The file cannot be found[: {problem}]',
      remedy: 'Check the path in project.json; it is read from the folder of that file.',
    },
    'file-too-large': {
      what: 'The file is too large to read at once[: {megabytes} MB][; the limit is {limit_megabytes} MB]',
      remedy: 'Split it, or save it as GeoJSON text sequence (.geojsonl), which is read piece by piece.',
    },
    'format-unknown': {
      what: 'This kind of file is not known[: {got}]',
      remedy: 'Convert it to one that is[: {valid}].',
    },
    'project-invalid': {
      what: 'The project file is not as expected[: {problem}][; found {got}][, expected {expected}]',
      remedy: 'Correct project.json at this place.',
    },
    'layer-unknown': {
      what: 'There is no layer named {got}[; did you mean {nearest}?]',
      remedy: 'Use one of: {valid}.',
    },
    'mapping-field-missing': {
      what: 'The project maps a column {got}, but the file has none of that name[; did you mean {nearest}?]',
      remedy: 'Correct the column name under "fields" in project.json[. The file has: {valid}].',
    },
    'unit-unknown': {
      what: 'The unit {got} is not known[; did you mean {nearest}?]',
      remedy: 'Correct it under "units" in project.json[. Known units: {valid}].',
    },
    'encoding-guessed': {
      what: 'The file does not say its text encoding; it was read as {encoding}',
      remedy: 'Look at names with accents. If they look wrong, save the file as UTF-8.',
    },
    'csv-ragged-row': {
      what: 'The row has {got} cells where the header has {expected}',
      remedy: 'Look for a missing or extra delimiter, or a quotation mark left open.',
    },
    'csv-delimiter-guessed': {
      what: 'Columns were taken to be parted by {delimiter}',
      remedy: 'Nothing, if the columns look right in the figures.',
    },
    'csv-quote-unclosed': {
      what: 'A quotation mark is opened and never closed',
      remedy: 'Close it, or remove it; the rest of the file was read as one cell.',
    },
    'csv-header-repeated': {
      what: 'The column name {got} comes twice; the second is read as {read_as}',
      remedy: 'Give every column a name of its own.',
    },
    'geojson-invalid': {
      what: 'The GeoJSON is not valid: {problem}',
      remedy: 'Export the layer again as GeoJSON (RFC 7946), or correct this feature.',
    },
    'file-damaged': {
      what: 'The {format} file is damaged or not made as its format asks: {problem}',
      remedy: 'Copy or export it again. If it opens elsewhere, save it there in another format that is read.',
    },
    'file-refused': {
      what: 'The {format} file is refused for safety: {problem}',
      remedy: 'Ask whoever made it for a plain export, or unpack it yourself and give the file inside.',
    },
    'sidecar-missing': {
      what: 'The file {got} that belongs beside it is missing[; read as {read_as}]',
      remedy: 'Copy all files of the same name together: .shp, .dbf, .prj and .cpg.',
    },
    'values-left-out': {
      what: 'The column holds {got}, which no layer can hold ({count} values)',
      remedy: 'Nothing, if the column is not needed; otherwise export it as text or numbers.',
    },
    'spread-estimated': {
      what: '{count} crowns have a trunk diameter and no spread; the spread is estimated from {basis}, give or take {sd_pct} %',
      remedy: 'Measure spreads of some of these trees, of all sizes, and take the inventory in again.',
    },
    'inventory-rows-refused': {
      what: '{count} rows of the inventory were not taken: {reason}',
      remedy: 'See these rows in the row report, mend them in the inventory, and take it in again.',
    },
    'inventory-values-mended': {
      what: '{count} values of the inventory were mended: {reason}',
      remedy: 'Look at them in the row report; the value as it stood is beside the one taken.',
    },
    'stored-figures-unreadable': {
      what: 'The file does not hold what its command writes, so nothing of it was used',
      remedy: 'Run the command that writes it again, or remove the file.',
    },
    'stored-figures-overridden': {
      what: 'project.json sets {setting} itself, so the stored figure was not used',
      remedy: 'Take {setting} out of project.json to use the stored figure, or remove the file.',
    },
    'visit-tree-not-found': {
      what: 'The tree was not found on a visit ({by}, {on}); it still counts',
      remedy: 'Delete its crown if the tree is gone.',
    },
    'visit-other-host': {
      what: 'The tree was seen to be {got} on a visit ({by}, {on}); its host was left as it is',
      remedy: 'Change its host if that is right.',
    },
    'visit-new-tree': {
      what: 'A tree that the project does not have was found on a visit ({by}, {on}); it does not count yet',
      remedy: 'Add its crown under the same tree_id.',
    },
    'calibration-stale': {
      what: 'The calibration was made before {changed} changed; it is still used',
      remedy: 'Run crownfall calibrate again.',
    },
    'imagery-does-not-meet': {
      what: 'The imagery does not cover the project[: it covers {extent}][; the pavement lies in {other_extent}]',
      remedy: 'Check that it is the right picture and that its coordinate system is stated correctly.',
    },
    'store-newer': {
      what: 'The project file is of version {got}; this program knows versions up to {known}',
      remedy: 'Install the newer Crownfall that wrote it. The file was left as it is.',
    },
    'store-migrated': {
      what: 'The project file was brought from version {from} to {to}; the file as it was is kept as {copy}',
      remedy: 'Keep the copy until you have seen that all is well.',
    },
    'store-columns-adopted': {
      what: 'Another program has changed the columns of {layers}; from now on they are journaled too',
      remedy: 'Nothing to do. What was written to new columns before this has no entry in the journal.',
    },
    'history-outdated': {
      what: 'The layer was changed since the history beside it was written; journal, versions and visits were not taken over',
      remedy: 'Edit the project in its GeoPackage file instead, or start a new journal from here.',
    },
    'imagery-encoding-unsupported': {
      what: 'The image is stored in a way that is not read: {problem}',
      remedy: 'Save it as a GeoTIFF with deflate, LZW or JPEG compression and 8-bit or 16-bit bands.',
    },
    'imagery-not-placed': {
      what: 'Nothing says where the image lies on the ground',
      remedy: 'Put its world file (.tfw) beside it, or ask for it as a GeoTIFF.',
    },
    'imagery-block-damaged': {
      what: 'Parts of the image are damaged ({count}), the first at column {column}, row {row}: {problem}',
      remedy: 'Copy the file again from its source. Pixels there count as without data.',
    },
    'imagery-alpha-is-infrared': {
      what: 'Band {band} is labelled as transparency, but it holds near-infrared light and is used so',
      remedy: 'Nothing, if the picture has four bands; otherwise state the roles of its bands.',
    },
    'imagery-roles-assumed': {
      what: 'The image does not say what its bands are; they were taken to be {read_as}',
      remedy: 'If colours look wrong, state the roles of its bands.',
    },
    'imagery-slow-to-stream': {
      what: 'The image is slow to look at: {reason}',
      remedy: 'Run crownfall imagery prepare on it once; the result opens at once at any scale.',
    },
    'field-missing': {
      what: '{field} is not given[; it was read as {read_as}][ (times: {count})]',
      remedy: 'Fill in {field} where you can.',
    },
    'field-not-a-number': {
      what: '“{got}” in {field} cannot be read as a number[ in {unit}]',
      remedy:
        'Write a plain number with a decimal point, without a thousands mark. Other units belong in project.json.',
    },
    'number-mended': {
      what: '“{got}” in {field} was read as {read_as} (values read this way: {count})',
      remedy: 'Nothing, if that is what was meant.',
    },
    'value-out-of-range': {
      what: '{field} is {got}; possible is {expected}',
      remedy: 'Correct the value; check its unit and its decimal point.',
    },
    'date-unreadable': {
      what: '“{got}” in {field} is not a date that can be read',
      remedy: 'Write dates as year-month-day: 2026-05-03.',
    },
    'date-impossible': {
      what: 'There is no day {got} in the calendar ({field})',
      remedy: 'Correct the date; write it as year-month-day: 2026-05-03.',
    },
    'date-ambiguous': {
      what: '“{got}” in {field} could be {either} or {or}; no date in the column settles which',
      remedy: 'Write dates as year-month-day: 2026-05-03.',
    },
    'date-order-inferred': {
      what: 'Dates such as “{got}” in {field} were read as {read_as}, because “{proof}” can be read one way only (dates: {count})',
      remedy: 'Check one of them. Dates written year-month-day leave no doubt.',
    },
    'unknown-word': {
      what: '“{got}” is not a word for {field}[; it was read as {read_as}][; did you mean {nearest}?][ (times: {count})]',
      remedy: 'Use one of: {valid}.',
    },
    'layer-missing': {
      what: 'The project has no {layer} layer',
      remedy:
        'Name its file under "layers" in project.json. Crowns and pavement are needed; without ratings no tree has a figure.',
    },
    'layer-empty': {
      what: 'The layer has nothing usable in it (features or rows read: {rows})',
      remedy: 'Check that it is the right file, and see the other findings of this layer.',
    },
    'layers-do-not-meet': {
      what: 'The layer lies at {extent}, the {other} at {other_extent}: they do not meet',
      remedy: 'Check that both are of the same town, and that the coordinate system of each is stated correctly.',
    },
    'feature-without-geometry': {
      what: 'It has no position or outline',
      remedy: 'Draw it, or delete the empty entry.',
    },
    'geometry-unexpected': {
      what: 'It is drawn as {got}; this layer takes {expected}',
      remedy: 'Draw it again in one of these ways, or move it to the layer it belongs to.',
    },
    'crown-without-size': {
      what: 'The tree is a point, and no spread says how wide its crown is',
      remedy: 'Fill in spread_m, or spread_a_m and spread_b_m, or radii_m; or draw the crown.',
    },
    'tree-id-made-up': {
      what: 'Trees without a tree_id were named after their outline: {count}',
      remedy: 'Give them ids of your own before you rate them; a made-up id changes when the outline does.',
    },
    'tree-id-duplicate': {
      what: 'This tree_id was already used for another crown; this one is now {renamed_to}',
      remedy: 'Give each tree an id of its own. Ratings of this id went to the first crown.',
    },
    'tree-repeated': {
      what: 'The same tree with the same crown is listed again',
      remedy: 'Delete the second entry; it was counted once.',
    },
    'id-made-up': {
      what: 'Entries without {field} were named after their shape: {count}',
      remedy: 'Give them ids of your own if you want to find them again later.',
    },
    'id-duplicate': {
      what: 'This {field} was already used for another shape; this one is now {renamed_to}',
      remedy: 'Give each its own id.',
    },
    'feature-repeated': {
      what: 'The same entry with the same shape is listed again',
      remedy: 'Delete the second entry; it was counted once.',
    },
    'block-parts-joined': {
      what: 'The block comes in {parts} parts, which were joined',
      remedy: 'Nothing, if they are one block; else give each its own block_id.',
    },
    'width-defaulted': {
      what: 'Pavement lines of kind {kind} without a width were taken to be {width_m} m wide: {count}',
      remedy: 'Fill in width_m, or change default_width_m in the settings.',
    },
    'area-from-outline': {
      what: 'area_m2 is not given; the outline’s own area was taken: {area_m2} m²',
      remedy: 'Nothing, if the outline was drawn exactly; else fill in area_m2.',
    },
    'rating-of-unknown-tree': {
      what: 'No tree has the id {got}[; did you mean {similar}?]',
      remedy: 'Correct the tree_id, or add the tree to the crowns.',
    },
    'observation-of-unknown-place': {
      what: 'Nothing has the {field} {got}[; did you mean {similar}?]',
      remedy: 'Correct the id, or add the tree or the block.',
    },
    'rating-contradiction': {
      what: 'The cause is {cause}, but the gall load is {gall_load}',
      remedy: 'Look at the tree again. Without galls no frass falls, so this crown is taken to stain nothing.',
    },
    'rating-without-figure': {
      what: 'The rating has neither a percentage nor a class',
      remedy: 'Fill in browned_pct, defoliated_pct, or scale and class. What it says of the cause is still used.',
    },
    'rating-unconfirmed': {
      what: 'Suggestions from imagery that nobody has confirmed do not count: {count}',
      remedy: 'Look at each crown, correct browned_pct where it is wrong, and put your name into confirmed_by.',
    },
    'class-and-percent-disagree': {
      what: 'browned_pct is {got}, but class {class} of {scale} means {expected}',
      remedy: 'Correct one of the two. The percentage was used.',
    },
    'cause-without-evidence': {
      what: 'The cause is {cause}, but neither galls nor other evidence are recorded',
      remedy: 'Fill in gall_load or evidence. Until then this rating does not count as a sign that the crown stains.',
    },
    'galls-without-cause': {
      what: 'The gall load is {gall_load}, but the cause is not stated',
      remedy: 'Fill in cause: galls alone do not say that frass falls.',
    },
    'setting-unknown': {
      what: 'There is no setting {field}[; did you mean {nearest}?]',
      remedy: 'Use one of: {valid}.',
    },
    'setting-out-of-range': {
      what: 'The setting {field} is {got}; possible is {expected}. Used instead: {used}',
      remedy: 'Correct it in project.json, or remove it to take the default.',
    },
    'raters-disagree': {
      what: 'The raters do not agree on what stains ({raters}); {taken} was taken',
      remedy: 'Look at the tree together and rate it again.',
    },
    'host-without-ratings': {
      what: 'No tree of this host[ ({host})] is rated this season; trees without a figure: {count}',
      remedy: 'Rate some of them. Until then they add nothing to the totals, which does not mean that they are clean.',
    },
    'crs-unknown': {
      what: 'The coordinate system is not known[: {given}][; {reason}][ ({detail})]',
      remedy: 'State it as an EPSG code in project.json, for example "crs": "EPSG:2236".',
    },
    'crs-datum-refused': {
      what: 'Coordinates on this datum cannot be converted closely enough[: {datum}][ ({given})][; {reason}]',
      remedy: 'Convert the file to WGS 84 or NAD 83 in a program that has the datum grids, then read it again.',
    },
    'crs-missing': {
      what: 'The file does not say its coordinate system',
      remedy: 'State it as an EPSG code in project.json, for example "crs": "EPSG:2236".',
    },
    'lonlat-out-of-range': {
      what: 'The position is not on the earth[: {got}]',
      remedy: 'Longitude lies within ±180 and latitude within ±90. Check the coordinate system of the file.',
    },
    'lonlat-maybe-swapped': {
      what: 'Longitude and latitude seem to be swapped[: {got}]',
      remedy: 'Put the longitude first, then the latitude.',
    },
    'coordinates-not-finite': {
      what: 'A coordinate is empty or not a number[: {got}]',
      remedy: 'Draw the feature again, or delete the broken vertex.',
    },
    'ring-too-short': {
      what: 'An outline has too few vertices[: {got}]',
      remedy: 'Draw it again with at least three corners.',
    },
    'ring-unclosed': {
      what: 'An outline does not end where it begins[; the gap is {gap_m} m]',
      remedy: 'It was closed with a straight line. Look whether a corner is missing.',
    },
    'ring-self-crosses': {
      what: 'An outline crosses itself[ (crossings: {crossings})]',
      remedy: 'Move the vertices near this place until it no longer does.',
    },
    'ring-zero-area': {
      what: 'An outline encloses no area',
      remedy: 'Draw it again, or delete it.',
    },
    'outline-zero-size': {
      what: 'The crown has no size[: {got}]',
      remedy: 'Measure the spread again.',
    },
    'outline-radii-too-few': {
      what: 'There are too few radii for an outline[: {got}]',
      remedy: 'Give at least three, better four or eight, clockwise from north.',
    },
    'line-too-short': {
      what: 'The line has no length[; points on it: {got}]',
      remedy: 'Draw it again with at least two points apart from each other.',
    },
    'streets-enclose-little': {
      what: 'The streets enclose only {enclosed_pct} % of the pavement; at least {least_pct} % is wanted for blocks',
      remedy: 'Add the streets that close the blocks, or give a blocks layer. Until then square cells are used.',
    },
    'streets-enclose-nothing': {
      what: 'The streets enclose no block[ (streets: {streets})]',
      remedy: 'Add the streets that close the blocks, or give a blocks layer. Until then square cells are used.',
    },
  },
  unknown: { what: 'Something needs attention: {code}', remedy: 'Look at this place in the data.' },
  effects: {
    stops: 'The job stops here.',
    left_out: 'Left out of the totals.',
    mended: 'Mended, and counted.',
    assumed: 'Counted, with this assumption.',
    kept: 'Counted as it is.',
  },
  severities: { error: 'error', warning: 'warning', note: 'note' },
  layers: {
    crowns: 'crowns',
    pavement: 'pavement',
    blocks: 'blocks',
    ratings: 'ratings',
    quadrats: 'quadrats',
    complaints: 'complaints',
    bloom: 'bloom',
    water: 'water',
    sites: 'sites',
    streets: 'streets',
    settings: 'settings',
    imagery: 'imagery',
  },
  place: {
    feature: '{value}',
    position: 'feature no. {value}',
    row: 'row {value}',
    field: 'field {value}',
    vertex: 'vertex {value}',
    lonlat: 'longitude {lon}, latitude {lat}',
    nowhere: 'the whole project',
  },
  terms: {
    point: 'a point',
    points: 'several points',
    line: 'a line',
    area: 'an area',
    'needs-grid': 'it needs a datum grid',
    'shift-unknown': 'its shift to WGS 84 is not known',
    'not-supported': 'its projection is not supported',
    'not-readable': 'its description cannot be read',
    'code-not-in-table': 'its code is not in the table',
    'no-datum': 'it states no datum',
    strips: 'it is stored in strips, not tiles',
    'no-overviews': 'it has no smaller versions of itself',
  },
  decimal: '.',
  more: 'Further findings of this kind: {more}.',
};
