/*
 * GEOS as the outside judge of pair and union areas.
 *
 * Standard input: doubles, case after case. A case is a number of polygons, the first of them the pavement; a polygon is a
 * number of rings (shell first), a ring a number of vertices and its coordinates, open. Standard output: for each case one
 * double per crown, the area it shares with the pavement, then the area that all crowns together share with it. NaN when a
 * polygon of the case is not valid by GEOS. Nothing is kept from case to case.
 *
 *   cc -O2 geos-areas.c -lgeos_c -o geos-areas
 */
#include <geos_c.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static GEOSContextHandle_t h;

static void complain(const char *message, void *unused) {
  (void)unused;
  fprintf(stderr, "GEOS: %s\n", message);
}

static int next_count(int *count) {
  double value;
  if (fread(&value, sizeof value, 1, stdin) != 1) return 0;
  *count = (int)value;
  return 1;
}

static void read_doubles(double *to, size_t count) {
  if (fread(to, sizeof *to, count, stdin) != count) {
    fprintf(stderr, "geos-areas: input ends inside a case\n");
    exit(1);
  }
}

static int must_count(void) {
  double value;
  read_doubles(&value, 1);
  return (int)value;
}

static GEOSGeometry *read_ring(void) {
  int n = must_count();
  double *xy = malloc(sizeof *xy * 2 * (n + 1));
  read_doubles(xy, 2 * (size_t)n);
  xy[2 * n] = xy[0];
  xy[2 * n + 1] = xy[1];
  GEOSGeometry *ring = GEOSGeom_createLinearRing_r(h, GEOSCoordSeq_copyFromBuffer_r(h, xy, n + 1, 0, 0));
  free(xy);
  return ring;
}

static GEOSGeometry *read_polygon(void) {
  int holes = must_count() - 1;
  GEOSGeometry *shell = read_ring();
  GEOSGeometry **inner = malloc(sizeof *inner * (holes + 1));
  for (int i = 0; i < holes; i++) inner[i] = read_ring();
  GEOSGeometry *polygon = GEOSGeom_createPolygon_r(h, shell, inner, holes);
  free(inner);
  return polygon;
}

static double shared_area(const GEOSGeometry *a, const GEOSGeometry *b) {
  double area = NAN;
  GEOSGeometry *shared = GEOSIntersection_r(h, a, b);
  if (shared) {
    GEOSArea_r(h, shared, &area);
    GEOSGeom_destroy_r(h, shared);
  }
  return area;
}

/* Takes the crowns over. */
static double shared_with_all(const GEOSGeometry *pavement, GEOSGeometry **crowns, int count) {
  GEOSGeometry *all = GEOSGeom_createCollection_r(h, GEOS_GEOMETRYCOLLECTION, crowns, count);
  GEOSGeometry *joined = GEOSUnaryUnion_r(h, all);
  double area = joined ? shared_area(pavement, joined) : NAN;
  if (joined) GEOSGeom_destroy_r(h, joined);
  GEOSGeom_destroy_r(h, all);
  return area;
}

static void reckon_case(int count) {
  GEOSGeometry **polygons = malloc(sizeof *polygons * count);
  double *areas = malloc(sizeof *areas * count);
  int valid = 1;
  for (int i = 0; i < count; i++) {
    polygons[i] = read_polygon();
    valid = valid && polygons[i] && GEOSisValid_r(h, polygons[i]) == 1;
  }
  for (int i = 1; i < count; i++) areas[i - 1] = valid ? shared_area(polygons[0], polygons[i]) : NAN;
  areas[count - 1] = shared_with_all(polygons[0], polygons + 1, count - 1);
  if (!valid) areas[count - 1] = NAN;
  fwrite(areas, sizeof *areas, count, stdout);
  GEOSGeom_destroy_r(h, polygons[0]);
  free(polygons);
  free(areas);
}

int main(int argc, char **argv) {
  (void)argv;
  if (argc > 1) {
    printf("GEOS %s\n", GEOSversion());
    return 0;
  }
  h = GEOS_init_r();
  GEOSContext_setErrorMessageHandler_r(h, complain, NULL);
  for (int count; next_count(&count);) reckon_case(count);
  GEOS_finish_r(h);
  return 0;
}
