/* The daily water balance of grovewright in plain C, for comparing speed: the same equations on the
 * same numbers, read from a file that the Java program wrote. Prints nanoseconds per plant and day,
 * transpired and lost water. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define RUNS 9
#define SIZES 8

static double min(double a, double b) { return a < b ? a : b; }
static double max(double a, double b) { return a > b ? a : b; }

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec * 1e9 + t.tv_nsec;
}

static double *numbers(FILE *file, size_t count) {
  double *read = malloc(count * sizeof(double));
  if (!read || fread(read, sizeof(double), count, file) != count) {
    fprintf(stderr, "input too short\n");
    exit(2);
  }
  return read;
}

int main(int argc, char **argv) {
  FILE *file = argc > 1 ? fopen(argv[1], "rb") : NULL;
  if (!file) {
    fprintf(stderr, "usage: balance INPUT\n");
    return 2;
  }
  double *head = numbers(file, 7);
  int days = head[0], months = head[1], plants = head[2];
  double rew = head[3], tew = head[4], per_metre = head[5], bare = 1 - head[6];
  double *day_rows = numbers(file, (size_t)days * 6);
  double *et0 = malloc(days * sizeof(double)), *rain = malloc(days * sizeof(double));
  double *shift = malloc(days * sizeof(double)), *given = malloc(days * sizeof(double));
  int *day_of_year = malloc(days * sizeof(int)), *slot = malloc(days * sizeof(int));
  for (int d = 0; d < days; d++) {
    et0[d] = day_rows[6 * d];
    rain[d] = day_rows[6 * d + 1];
    shift[d] = day_rows[6 * d + 2];
    given[d] = day_rows[6 * d + 3];
    day_of_year[d] = day_rows[6 * d + 4];
    slot[d] = day_rows[6 * d + 5];
  }
  size_t stride = 1 + 366 + (size_t)months * SIZES;
  double *all = numbers(file, stride * plants);
  fclose(file);

  double best = 1e300, transpired = 0, lost = 0;
  for (int run = 0; run < RUNS; run++) {
    transpired = 0;
    lost = 0;
    double from = now();
    for (int p = 0; p < plants; p++) {
      const double *plant = all + stride * p;
      double table = plant[0];
      const double *basal_by_day = plant + 1;
      const double *sizes = plant + 367;
      double de = 0, dr = 0, rain_sum = 0, given_sum = 0, wanted = 0, evaporated = 0;
      double plant_transpired = 0, plant_lost = 0;
      int drip = 0, stressed = 0;
      for (int d = 0; d < days; d++) {
        const double *size = sizes + SIZES * slot[d];
        double soil = size[0];
        double irrigation = given[d] * 1000 / soil;
        if (irrigation > 0) {
          drip = 1;
        } else if (rain[d] > 3) {
          drip = 0;
        }
        double stand = basal_by_day[day_of_year[d]];
        double basal = stand * size[2], shading = stand * size[3];
        double greatest = max(1.2 + shift[d] * size[4], shading + 0.05);
        double wetted = drip ? size[5] : 1, exposed = drip ? size[6] : size[7];

        double concentrated = rain[d] + irrigation / wetted;
        double start = max(0, de - concentrated);
        double kr = start <= rew ? 1 : max(0, (tew - start) / (tew - rew));
        double ke = bare * min(max(0, kr * (greatest - shading)), exposed * greatest);
        double evaporation = min(ke * et0[d], (tew - start) * exposed);
        double taw = per_metre * size[1];
        double share = table + 0.04 * (5 - (min(basal, greatest) * et0[d] + evaporation));
        double raw = max(0.1, min(0.8, share)) * taw;
        double water = rain[d] + irrigation;
        double root = max(0, dr - water);
        double ks = root <= raw ? 1 : max(0, (taw - root) / (taw - raw));
        double left = max(0, taw - dr + water);
        evaporation = min(evaporation, left);
        double transpiration = min(ks * basal * et0[d], left - evaporation);
        double used = evaporation + transpiration;
        double percolation = max(0, water - used - dr);
        de = min(tew, start + evaporation / exposed);
        dr = dr - water + used + percolation;

        double litres = soil / 1000;
        stressed += ks < 1 && basal > 0;
        rain_sum += rain[d] * litres;
        given_sum += irrigation * litres;
        plant_transpired += transpiration * litres;
        wanted += basal * et0[d] * litres;
        evaporated += evaporation * litres;
        plant_lost += percolation * litres;
      }
      transpired += plant_transpired;
      lost += plant_lost;
      /* Keeps the sums that are not printed from being left out. */
      if (rain_sum + given_sum + wanted + evaporated + stressed < 0) {
        return 1;
      }
    }
    best = min(best, now() - from);
  }
  printf("%.3f %.6f %.6f\n", best / plants / days, transpired, lost);
  return 0;
}
