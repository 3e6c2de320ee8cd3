/*
 * GEOS from C on the benchmark's scene: pair areas, unions per pavement piece, offsets, and the whole ledger.
 *
 *   geos-overlay REPEATS LEDGER < scene
 *
 * The scene: int32 count, then per ring int32 vertices and their doubles; crowns, then pieces. One line per repeat and task:
 * task, CPU seconds, sum of areas (m²), number of areas. Geometries are made before the clock runs; the tree's build and its
 * queries count. LEDGER 1: the drift rings of 0.5 and 1 m are laid over the pavement too, layer by layer.
 */
#include <geos_c.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define QUADRANT_SEGMENTS 16

static GEOSContextHandle_t h;

typedef struct {
  int count;
  GEOSGeometry **item;
} List;

typedef struct {
  int count, room;
  GEOSGeometry **item;
} Hits;

typedef struct {
  double area;
  long count;
} Sum;

static double cpu_seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec + t.tv_nsec * 1e-9;
}

static void must_read(void *to, size_t size, size_t count) {
  if (fread(to, size, count, stdin) != count) exit(1);
}

static List read_list(void) {
  List list;
  must_read(&list.count, 4, 1);
  list.item = malloc(sizeof *list.item * list.count);
  for (int i = 0; i < list.count; i++) {
    int n;
    must_read(&n, 4, 1);
    double *xy = malloc(16 * (n + 1));
    must_read(xy, 16, n);
    xy[2 * n] = xy[0];
    xy[2 * n + 1] = xy[1];
    GEOSCoordSequence *sequence = GEOSCoordSeq_copyFromBuffer_r(h, xy, n + 1, 0, 0);
    free(xy);
    list.item[i] = GEOSGeom_createPolygon_r(h, GEOSGeom_createLinearRing_r(h, sequence), NULL, 0);
  }
  return list;
}

static void collect(void *item, void *to) {
  Hits *hits = to;
  if (hits->count == hits->room) {
    hits->room = 2 * hits->room + 16;
    hits->item = realloc(hits->item, sizeof *hits->item * hits->room);
  }
  hits->item[hits->count++] = item;
}

static GEOSSTRtree *tree_of(List list) {
  GEOSSTRtree *tree = GEOSSTRtree_create_r(h, 10);
  for (int i = 0; i < list.count; i++) GEOSSTRtree_insert_r(h, tree, list.item[i], list.item[i]);
  return tree;
}

static void add_shared(Sum *sum, const GEOSGeometry *a, const GEOSGeometry *b) {
  double area = 0;
  GEOSGeometry *shared = GEOSIntersection_r(h, a, b);
  GEOSArea_r(h, shared, &area);
  GEOSGeom_destroy_r(h, shared);
  sum->area += area;
  sum->count++;
}

static Sum pair_areas(List pieces, GEOSSTRtree *tree) {
  Sum sum = {0, 0};
  Hits hits = {0, 0, NULL};
  for (int i = 0; i < pieces.count; i++) {
    hits.count = 0;
    GEOSSTRtree_query_r(h, tree, pieces.item[i], collect, &hits);
    for (int k = 0; k < hits.count; k++) add_shared(&sum, pieces.item[i], hits.item[k]);
  }
  free(hits.item);
  return sum;
}

static Sum union_areas(List pieces, GEOSSTRtree *tree) {
  Sum sum = {0, 0};
  Hits hits = {0, 0, NULL};
  for (int i = 0; i < pieces.count; i++) {
    hits.count = 0;
    GEOSSTRtree_query_r(h, tree, pieces.item[i], collect, &hits);
    if (hits.count == 0) continue;
    for (int k = 0; k < hits.count; k++) hits.item[k] = GEOSGeom_clone_r(h, hits.item[k]);
    GEOSGeometry *all = GEOSGeom_createCollection_r(h, GEOS_MULTIPOLYGON, hits.item, hits.count);
    GEOSGeometry *joined = GEOSUnaryUnion_r(h, all);
    add_shared(&sum, pieces.item[i], joined);
    GEOSGeom_destroy_r(h, joined);
    GEOSGeom_destroy_r(h, all);
  }
  free(hits.item);
  return sum;
}

static List offset_list(List crowns, double distance) {
  List out = {crowns.count, malloc(sizeof *out.item * crowns.count)};
  for (int i = 0; i < crowns.count; i++) out.item[i] = GEOSBuffer_r(h, crowns.item[i], distance, QUADRANT_SEGMENTS);
  return out;
}

static void destroy_list(List list) {
  for (int i = 0; i < list.count; i++) GEOSGeom_destroy_r(h, list.item[i]);
  free(list.item);
}

static void report(const char *task, double since, Sum sum) {
  printf("%s %.6f %.9f %ld\n", task, cpu_seconds() - since, sum.area, sum.count);
  fflush(stdout);
}

static void offsets(List crowns, double distance, Sum *sum) {
  for (int i = 0; i < crowns.count; i++) {
    double area = 0;
    GEOSGeometry *offset = GEOSBuffer_r(h, crowns.item[i], distance, QUADRANT_SEGMENTS);
    GEOSArea_r(h, offset, &area);
    GEOSGeom_destroy_r(h, offset);
    sum->area += area;
    sum->count++;
  }
}

static Sum layer_areas(List crowns, List pieces) {
  GEOSSTRtree *tree = tree_of(crowns);
  Sum pairs = pair_areas(pieces, tree);
  Sum unions = union_areas(pieces, tree);
  GEOSSTRtree_destroy_r(h, tree);
  (void)pairs;
  return unions;
}

static void ledger(List crowns, List pieces) {
  double since = cpu_seconds();
  Sum sum = layer_areas(crowns, pieces);
  for (int ring = 1; ring <= 2; ring++) {
    List around = offset_list(crowns, 0.5 * ring);
    sum = layer_areas(around, pieces);
    destroy_list(around);
  }
  report("ledger", since, sum);
}

int main(int argc, char **argv) {
  int repeats = argc > 1 ? atoi(argv[1]) : 5;
  int with_ledger = argc > 2 ? atoi(argv[2]) : 0;
  h = GEOS_init_r();
  List crowns = read_list(), pieces = read_list();
  for (int r = 0; r < repeats; r++) {
    if (with_ledger) {
      ledger(crowns, pieces);
      continue;
    }
    double since = cpu_seconds();
    GEOSSTRtree *tree = tree_of(crowns);
    report("pairs", since, pair_areas(pieces, tree));
    since = cpu_seconds();
    report("unions", since, union_areas(pieces, tree));
    GEOSSTRtree_destroy_r(h, tree);
    since = cpu_seconds();
    Sum sum = {0, 0};
    offsets(crowns, 0.5, &sum);
    offsets(crowns, 1.0, &sum);
    report("offsets", since, sum);
  }
  fprintf(stderr, "GEOS %s\n", GEOSversion());
  return 0;
}
