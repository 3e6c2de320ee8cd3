/** The words of every finding in Spanish. */
import type { Catalogue } from './words.ts';

export const ES: Catalogue = {
  messages: {
    'not-json': {
      what: 'El archivo no es JSON válido[ cerca de la línea {line}][: {problem}]',
      remedy: 'Vuelva a exportarlo o ábralo en un editor que señale los errores de JSON.',
    },
    'file-truncated': {
      what: 'El archivo termina antes de tiempo[, tras {bytes} bytes][: {problem}]',
      remedy: 'Probablemente se cortó al copiarlo. Cópielo o expórtelo de nuevo.',
    },
    'file-missing': {
      what: 'No se encuentra el archivo[: {problem}]',
      remedy: 'Revise la ruta en project.json; se lee desde la carpeta de ese archivo.',
    },
    'file-too-large': {
      what: 'El archivo es demasiado grande para leerlo de una vez[: {megabytes} MB][; el límite es {limit_megabytes} MB]',
      remedy: 'Divídalo o guárdelo como secuencia de texto GeoJSON (.geojsonl), que se lee por partes.',
    },
    'format-unknown': {
      what: 'No se conoce este tipo de archivo[: {got}]',
      remedy: 'Conviértalo a uno conocido[: {valid}].',
    },
    'project-invalid': {
      what: 'El archivo del proyecto no es como se espera[: {problem}][; contiene {got}][, se esperaba {expected}]',
      remedy: 'Corrija project.json en este punto.',
    },
    'layer-unknown': {
      what: 'No existe ninguna capa llamada {got}[; ¿quiso decir {nearest}?]',
      remedy: 'Use una de estas: {valid}.',
    },
    'mapping-field-missing': {
      what: 'El proyecto asigna una columna {got}, pero el archivo no tiene ninguna con ese nombre[; ¿quiso decir {nearest}?]',
      remedy: 'Corrija el nombre de la columna en «fields» de project.json[. El archivo tiene: {valid}].',
    },
    'unit-unknown': {
      what: 'No se conoce la unidad {got}[; ¿quiso decir {nearest}?]',
      remedy: 'Corríjala en «units» de project.json[. Unidades conocidas: {valid}].',
    },
    'encoding-guessed': {
      what: 'El archivo no indica su codificación de texto; se leyó como {encoding}',
      remedy: 'Revise los nombres con acentos. Si se ven mal, guarde el archivo en UTF-8.',
    },
    'csv-ragged-row': {
      what: 'La fila tiene {got} celdas y el encabezado {expected}',
      remedy: 'Busque un separador que falte o sobre, o unas comillas sin cerrar.',
    },
    'csv-delimiter-guessed': {
      what: 'Se supuso que las columnas están separadas por {delimiter}',
      remedy: 'Nada, si las columnas se ven bien en las cifras.',
    },
    'csv-quote-unclosed': {
      what: 'Hay unas comillas abiertas que no se cierran',
      remedy: 'Ciérrelas o quítelas; el resto del archivo se leyó como una sola celda.',
    },
    'csv-header-repeated': {
      what: 'El nombre de columna {got} aparece dos veces; la segunda se lee como {read_as}',
      remedy: 'Dé a cada columna un nombre propio.',
    },
    'geojson-invalid': {
      what: 'El GeoJSON no es válido: {problem}',
      remedy: 'Exporte la capa de nuevo como GeoJSON (RFC 7946) o corrija este elemento.',
    },
    'file-damaged': {
      what: 'El archivo {format} está dañado o no sigue su formato: {problem}',
      remedy: 'Cópielo o expórtelo de nuevo. Si se abre en otro programa, guárdelo allí en otro formato que se lea.',
    },
    'file-refused': {
      what: 'El archivo {format} se rechaza por seguridad: {problem}',
      remedy: 'Pida una exportación sencilla a quien lo hizo, o descomprímalo usted y dé el archivo que hay dentro.',
    },
    'sidecar-missing': {
      what: 'Falta el archivo {got} que debe estar junto a él[; se lee como {read_as}]',
      remedy: 'Copie juntos todos los archivos del mismo nombre: .shp, .dbf, .prj y .cpg.',
    },
    'values-left-out': {
      what: 'La columna contiene {got}, que ninguna capa puede guardar ({count} valores)',
      remedy: 'Nada, si la columna no hace falta; si no, expórtela como texto o números.',
    },
    'spread-estimated': {
      what: '{count} copas tienen diámetro de tronco y no de copa; el de copa se estima a partir de {basis}, con ± {sd_pct} %',
      remedy: 'Mida la copa de algunos de estos árboles, de todos los tamaños, e incorpore de nuevo el inventario.',
    },
    'inventory-rows-refused': {
      what: 'No se tomaron {count} filas del inventario: {reason}',
      remedy: 'Busque estas filas en el informe por filas, corríjalas en el inventario e incorpórelo de nuevo.',
    },
    'inventory-values-mended': {
      what: 'Se corrigieron {count} valores del inventario: {reason}',
      remedy: 'Véalos en el informe por filas; el valor original está junto al tomado.',
    },
    'stored-figures-unreadable': {
      what: 'El archivo no contiene lo que escribe su orden, así que no se usó nada de él',
      remedy: 'Ejecute de nuevo la orden que lo escribe o borre el archivo.',
    },
    'stored-figures-overridden': {
      what: 'project.json fija {setting}, así que no se usó la cifra guardada',
      remedy: 'Quite {setting} de project.json para usar la cifra guardada, o borre el archivo.',
    },
    'visit-tree-not-found': {
      what: 'El árbol no se encontró en una visita ({by}, {on}); sigue contando',
      remedy: 'Borre su copa si el árbol ya no está.',
    },
    'visit-other-host': {
      what: 'En una visita ({by}, {on}) se vio que el árbol es {got}; el hospedante queda como estaba',
      remedy: 'Cambie el hospedante si es correcto.',
    },
    'visit-new-tree': {
      what: 'En una visita ({by}, {on}) se encontró un árbol que el proyecto no tiene; aún no cuenta',
      remedy: 'Añada su copa con el mismo tree_id.',
    },
    'calibration-stale': {
      what: 'La calibración es anterior a cambios en {changed}; se sigue usando',
      remedy: 'Ejecute de nuevo crownfall calibrate.',
    },
    'imagery-does-not-meet': {
      what: 'La imagen no cubre el proyecto[: cubre {extent}][; el pavimento está en {other_extent}]',
      remedy: 'Compruebe que es la imagen correcta y que su sistema de coordenadas está bien indicado.',
    },
    'store-newer': {
      what: 'El archivo del proyecto es de la versión {got}; este programa conoce hasta la versión {known}',
      remedy: 'Instale la versión más reciente de Crownfall que lo escribió. El archivo quedó como estaba.',
    },
    'store-migrated': {
      what: 'El archivo del proyecto pasó de la versión {from} a la {to}; el archivo anterior se conserva como {copy}',
      remedy: 'Conserve la copia hasta comprobar que todo está bien.',
    },
    'store-columns-adopted': {
      what: 'Otro programa cambió las columnas de {layers}; desde ahora también quedan en el registro de cambios',
      remedy: 'No hay nada que hacer. Lo escrito antes en columnas nuevas no figura en el registro.',
    },
    'history-outdated': {
      what: 'La capa cambió después de escribirse el historial que la acompaña; no se tomaron registro, versiones ni visitas',
      remedy: 'Edite el proyecto en su archivo GeoPackage, o empiece un registro nuevo desde aquí.',
    },
    'imagery-encoding-unsupported': {
      what: 'La imagen está guardada de un modo que no se lee: {problem}',
      remedy: 'Guárdela como GeoTIFF con compresión deflate, LZW o JPEG y bandas de 8 o 16 bits.',
    },
    'imagery-not-placed': {
      what: 'Nada indica dónde está la imagen sobre el terreno',
      remedy: 'Ponga a su lado su archivo de georreferencia (.tfw), o pídala como GeoTIFF.',
    },
    'imagery-block-damaged': {
      what: 'Hay partes dañadas en la imagen ({count}), la primera en la columna {column}, fila {row}: {problem}',
      remedy: 'Copie de nuevo el archivo desde su origen. Los píxeles de esas partes cuentan como sin datos.',
    },
    'imagery-alpha-is-infrared': {
      what: 'La banda {band} está marcada como transparencia, pero contiene infrarrojo cercano y se usa así',
      remedy: 'Nada, si la imagen tiene cuatro bandas; si no, indique el papel de sus bandas.',
    },
    'imagery-roles-assumed': {
      what: 'La imagen no dice qué son sus bandas; se tomaron como {read_as}',
      remedy: 'Si los colores se ven mal, indique el papel de sus bandas.',
    },
    'imagery-slow-to-stream': {
      what: 'La imagen tarda en verse: {reason}',
      remedy: 'Ejecute una vez crownfall imagery prepare; el resultado se abre al instante a cualquier escala.',
    },
    'field-missing': {
      what: 'Falta {field}[; se leyó como {read_as}][ (veces: {count})]',
      remedy: 'Rellene {field} donde pueda.',
    },
    'field-not-a-number': {
      what: '«{got}» en {field} no se puede leer como número[ en {unit}]',
      remedy:
        'Escriba un número sencillo con punto decimal y sin separador de miles. Otras unidades se indican en project.json.',
    },
    'number-mended': {
      what: '«{got}» en {field} se leyó como {read_as} (valores leídos así: {count})',
      remedy: 'Nada, si eso es lo que se quería decir.',
    },
    'value-out-of-range': {
      what: '{field} vale {got}; lo posible es {expected}',
      remedy: 'Corrija el valor; revise la unidad y el punto decimal.',
    },
    'date-unreadable': {
      what: '«{got}» en {field} no es una fecha legible',
      remedy: 'Escriba las fechas como año-mes-día: 2026-05-03.',
    },
    'date-impossible': {
      what: 'El día {got} no existe en el calendario ({field})',
      remedy: 'Corrija la fecha; escríbala como año-mes-día: 2026-05-03.',
    },
    'date-ambiguous': {
      what: '«{got}» en {field} puede ser {either} o {or}; ninguna fecha de la columna lo aclara',
      remedy: 'Escriba las fechas como año-mes-día: 2026-05-03.',
    },
    'date-order-inferred': {
      what: 'Las fechas como «{got}» en {field} se leyeron como {read_as}, porque «{proof}» solo se puede leer de una manera (fechas: {count})',
      remedy: 'Compruebe una de ellas. Las fechas escritas año-mes-día no dejan dudas.',
    },
    'unknown-word': {
      what: '«{got}» no es una palabra válida para {field}[; se leyó como {read_as}][; ¿quiso decir {nearest}?][ (veces: {count})]',
      remedy: 'Use una de estas: {valid}.',
    },
    'layer-missing': {
      what: 'El proyecto no tiene la capa {layer}',
      remedy:
        'Indique su archivo en «layers» de project.json. Las copas y el pavimento son necesarios; sin evaluaciones ningún árbol tiene cifra.',
    },
    'layer-empty': {
      what: 'La capa no contiene nada utilizable (elementos o filas leídos: {rows})',
      remedy: 'Compruebe que es el archivo correcto y vea los demás avisos de esta capa.',
    },
    'layers-do-not-meet': {
      what: 'La capa está en {extent} y la otra, {other}, en {other_extent}: no coinciden',
      remedy:
        'Compruebe que ambas son de la misma ciudad y que el sistema de coordenadas de cada una está bien indicado.',
    },
    'feature-without-geometry': {
      what: 'No tiene posición ni contorno',
      remedy: 'Dibújelo o borre la entrada vacía.',
    },
    'geometry-unexpected': {
      what: 'Está dibujado como {got}; esta capa admite {expected}',
      remedy: 'Dibújelo de nuevo de una de estas maneras o páselo a la capa que le corresponde.',
    },
    'crown-without-size': {
      what: 'El árbol es un punto y ningún diámetro indica la anchura de su copa',
      remedy: 'Rellene spread_m, o spread_a_m y spread_b_m, o radii_m; o dibuje la copa.',
    },
    'tree-id-made-up': {
      what: 'Árboles sin tree_id que recibieron un nombre según su contorno: {count}',
      remedy: 'Deles identificadores propios antes de evaluarlos; uno inventado cambia cuando cambia el contorno.',
    },
    'tree-id-duplicate': {
      what: 'Este tree_id ya se usó para otra copa; esta se llama ahora {renamed_to}',
      remedy: 'Dé a cada árbol su propio identificador. Las evaluaciones de este quedaron con la primera copa.',
    },
    'tree-repeated': {
      what: 'El mismo árbol con la misma copa aparece otra vez',
      remedy: 'Borre la segunda entrada; se contó una sola vez.',
    },
    'id-made-up': {
      what: 'Entradas sin {field} que recibieron un nombre según su forma: {count}',
      remedy: 'Deles identificadores propios si quiere encontrarlas más adelante.',
    },
    'id-duplicate': {
      what: 'Este {field} ya se usó para otra forma; esta se llama ahora {renamed_to}',
      remedy: 'Dé a cada una su propio identificador.',
    },
    'feature-repeated': {
      what: 'La misma entrada con la misma forma aparece otra vez',
      remedy: 'Borre la segunda entrada; se contó una sola vez.',
    },
    'block-parts-joined': {
      what: 'La manzana viene en {parts} partes, que se unieron',
      remedy: 'Nada, si son una sola manzana; si no, dé a cada una su propio block_id.',
    },
    'width-defaulted': {
      what: 'Líneas de pavimento de tipo {kind} sin ancho, a las que se dio un ancho de {width_m} m: {count}',
      remedy: 'Rellene width_m o cambie default_width_m en los ajustes.',
    },
    'area-from-outline': {
      what: 'Falta area_m2; se tomó el área del propio contorno: {area_m2} m²',
      remedy: 'Nada, si el contorno se dibujó con exactitud; si no, rellene area_m2.',
    },
    'rating-of-unknown-tree': {
      what: 'Ningún árbol tiene el identificador {got}[; ¿quiso decir {similar}?]',
      remedy: 'Corrija el tree_id o añada el árbol a las copas.',
    },
    'observation-of-unknown-place': {
      what: 'Nada tiene el {field} {got}[; ¿quiso decir {similar}?]',
      remedy: 'Corrija el identificador o añada el árbol o la manzana.',
    },
    'rating-contradiction': {
      what: 'La causa es {cause}, pero la carga de agallas es {gall_load}',
      remedy:
        'Vuelva a mirar el árbol. Sin agallas no caen excrementos de larvas, así que se supone que esta copa no mancha.',
    },
    'rating-without-figure': {
      what: 'La evaluación no tiene porcentaje ni clase',
      remedy: 'Rellene browned_pct, defoliated_pct, o scale y class. Lo que dice de la causa sí se usa.',
    },
    'rating-unconfirmed': {
      what: 'Las sugerencias de imágenes que nadie ha confirmado no cuentan: {count}',
      remedy: 'Mire cada copa, corrija browned_pct donde no sea correcto y ponga su nombre en confirmed_by.',
    },
    'class-and-percent-disagree': {
      what: 'browned_pct es {got}, pero la clase {class} de {scale} significa {expected}',
      remedy: 'Corrija uno de los dos. Se usó el porcentaje.',
    },
    'cause-without-evidence': {
      what: 'La causa es {cause}, pero no constan agallas ni otra evidencia',
      remedy:
        'Rellene gall_load o evidence. Mientras tanto, esta evaluación no cuenta como señal de que la copa mancha.',
    },
    'galls-without-cause': {
      what: 'La carga de agallas es {gall_load}, pero no se indica la causa',
      remedy: 'Rellene cause: las agallas por sí solas no dicen que caigan excrementos de larvas.',
    },
    'setting-unknown': {
      what: 'No existe el ajuste {field}[; ¿quiso decir {nearest}?]',
      remedy: 'Use uno de estos: {valid}.',
    },
    'setting-out-of-range': {
      what: 'El ajuste {field} es {got}; lo posible es {expected}. Se usó en su lugar: {used}',
      remedy: 'Corríjalo en project.json o quítelo para usar el valor por defecto.',
    },
    'raters-disagree': {
      what: 'Los evaluadores no coinciden en lo que mancha ({raters}); se tomó {taken}',
      remedy: 'Miren el árbol juntos y evalúenlo de nuevo.',
    },
    'host-without-ratings': {
      what: 'Esta temporada no hay ningún árbol evaluado de este hospedante[ ({host})]; árboles sin cifra: {count}',
      remedy: 'Evalúe algunos. Mientras tanto no suman nada a los totales, lo que no significa que estén limpios.',
    },
    'crs-unknown': {
      what: 'No se conoce el sistema de coordenadas[: {given}][; {reason}][ ({detail})]',
      remedy: 'Indíquelo como código EPSG en project.json, por ejemplo "crs": "EPSG:2236".',
    },
    'crs-datum-refused': {
      what: 'Las coordenadas en este datum no se pueden convertir con suficiente exactitud[: {datum}][ ({given})][; {reason}]',
      remedy:
        'Convierta el archivo a WGS 84 o NAD 83 con un programa que tenga las rejillas del datum y vuelva a leerlo.',
    },
    'crs-missing': {
      what: 'El archivo no indica su sistema de coordenadas',
      remedy: 'Indíquelo como código EPSG en project.json, por ejemplo "crs": "EPSG:2236".',
    },
    'lonlat-out-of-range': {
      what: 'La posición no está en la Tierra[: {got}]',
      remedy: 'La longitud está entre ±180 y la latitud entre ±90. Revise el sistema de coordenadas del archivo.',
    },
    'lonlat-maybe-swapped': {
      what: 'La longitud y la latitud parecen intercambiadas[: {got}]',
      remedy: 'Ponga primero la longitud y después la latitud.',
    },
    'coordinates-not-finite': {
      what: 'Una coordenada está vacía o no es un número[: {got}]',
      remedy: 'Dibuje el elemento de nuevo o borre el vértice dañado.',
    },
    'ring-too-short': {
      what: 'Un contorno tiene muy pocos vértices[: {got}]',
      remedy: 'Dibújelo de nuevo con al menos tres esquinas.',
    },
    'ring-unclosed': {
      what: 'Un contorno no termina donde empieza[; el hueco es de {gap_m} m]',
      remedy: 'Se cerró con una línea recta. Mire si falta una esquina.',
    },
    'ring-self-crosses': {
      what: 'Un contorno se cruza a sí mismo[ (cruces: {crossings})]',
      remedy: 'Mueva los vértices cercanos hasta que deje de cruzarse.',
    },
    'ring-zero-area': {
      what: 'Un contorno no encierra ninguna superficie',
      remedy: 'Dibújelo de nuevo o bórrelo.',
    },
    'outline-zero-size': {
      what: 'La copa no tiene tamaño[: {got}]',
      remedy: 'Mida de nuevo el diámetro.',
    },
    'outline-radii-too-few': {
      what: 'Hay muy pocos radios para un contorno[: {got}]',
      remedy: 'Dé al menos tres, mejor cuatro u ocho, en el sentido de las agujas del reloj desde el norte.',
    },
    'line-too-short': {
      what: 'La línea no tiene longitud[; puntos en ella: {got}]',
      remedy: 'Dibújela de nuevo con al menos dos puntos separados.',
    },
    'streets-enclose-little': {
      what: 'Las calles encierran solo el {enclosed_pct} % del pavimento; para formar manzanas hace falta al menos el {least_pct} %',
      remedy:
        'Añada las calles que cierran las manzanas o una capa de manzanas. Mientras tanto se usan celdas cuadradas.',
    },
    'streets-enclose-nothing': {
      what: 'Las calles no encierran ninguna manzana[ (calles: {streets})]',
      remedy:
        'Añada las calles que cierran las manzanas o una capa de manzanas. Mientras tanto se usan celdas cuadradas.',
    },
  },
  unknown: { what: 'Algo requiere atención: {code}', remedy: 'Mire este punto en los datos.' },
  effects: {
    stops: 'El trabajo se detiene aquí.',
    left_out: 'No entra en los totales.',
    mended: 'Corregido y contado.',
    assumed: 'Contado con este supuesto.',
    kept: 'Contado tal como está.',
  },
  severities: { error: 'error', warning: 'aviso', note: 'nota' },
  layers: {
    crowns: 'copas',
    pavement: 'pavimento',
    blocks: 'manzanas',
    ratings: 'evaluaciones',
    quadrats: 'cuadrantes',
    complaints: 'quejas',
    bloom: 'floración',
    water: 'agua',
    sites: 'lugares sensibles',
    streets: 'calles',
    settings: 'ajustes',
    imagery: 'imágenes',
  },
  place: {
    feature: '{value}',
    position: 'elemento n.º {value}',
    row: 'fila {value}',
    field: 'campo {value}',
    vertex: 'vértice {value}',
    lonlat: 'longitud {lon}, latitud {lat}',
    nowhere: 'todo el proyecto',
  },
  terms: {
    point: 'un punto',
    points: 'varios puntos',
    line: 'una línea',
    area: 'un área',
    'needs-grid': 'necesita una rejilla de datum',
    'shift-unknown': 'no se conoce su paso a WGS 84',
    'not-supported': 'su proyección no se admite',
    'not-readable': 'su descripción no se puede leer',
    'code-not-in-table': 'su código no está en la tabla',
    'no-datum': 'no indica ningún datum',
    strips: 'está guardada en franjas, no en teselas',
    'no-overviews': 'no lleva versiones reducidas de sí misma',
  },
  decimal: ',',
  more: 'Otros avisos de este tipo: {more}.',
};
