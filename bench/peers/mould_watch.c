/* The mould watch in plain C, for comparison: the same three lamps, dose, gap rule and outputs as src/core/physics/mould/mould-watch.ts.
 *
 *   cc -O3 -o mould_watch mould_watch.c -lm && ./mould_watch readings.bin 5
 *
 * As it stands every equation is written as its source has it. With -DSHORT_FORMS it takes the same short cuts as ours: series for
 * short steps and near temperatures, and no growth asked where it is too dry for any.
 *
 * The file holds doubles: loggers, readings of each, then for each logger its hours, air temperatures, relative humidities and
 * surface temperatures. Prints one JSON object: processor and wall seconds of each repeat, for the watch and for a plain sum of
 * the same columns, and what each logger's watch found. */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

/* ---- what the limits are; sources stand in src/core/physics ---- */

#define DAMP_RELHUM 0.65
#define DAMP_HOURS 48.0
#define LONGEST_STEP 6.0
#define OVER_READ 1.05
#define PARABOLA_LOW 1.0
#define PARABOLA_HIGH 30.0
#define CURVATURE 0.043
#define DOSE_HOURS 12.0
#define DOSE_WARMEST 30.0
#define ROUNDING 1e-6
#define BEND 2.3
/* class `very-sensitive` */
#define RATE_BELOW_ONE 1.0
#define RATE_FROM_ONE 2.0
#define CEILING_A 1.0
#define CEILING_B 7.0
#define CEILING_C 2.0
#define LEAST_PERCENT 80.0
#define DECLINE 0.25

/* ---- air ---- */

#define KELVIN 273.15
#define TRIPLE_POINT 0.01

static double ln_over_ice(double dry_bulb) {
  double T = dry_bulb + KELVIN;
  double fit = 6.3925247 + T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13)));
  return -5.6745359e3 / T + fit + 4.1635019 * log(T);
}

static double ln_over_water(double dry_bulb) {
  double T = dry_bulb + KELVIN;
  double fit = 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8));
  return -5.8002206e3 / T + fit + 6.5459673 * log(T);
}

static double sat_pressure(double dry_bulb) {
  return exp(dry_bulb <= TRIPLE_POINT ? ln_over_ice(dry_bulb) : ln_over_water(dry_bulb));
}

#ifdef SHORT_FORMS
static double log_of_ratio(double a, double b) {
  double s = (a - b) / (a + b), ss = s * s;
  if (ss > 4e-4) return log(a / b);
  return 2 * s * (1 + ss * (1 / 3. + ss * (1 / 5. + ss * (1 / 7. + ss * (1 / 9.)))));
}
static double less_exp(double z) {
  if (z > 0.01) return -expm1(-z);
  return z * (1 - (z / 2) * (1 - (z / 3) * (1 - (z / 4) * (1 - (z / 5) * (1 - z / 6)))));
}
static double less_log(double y) {
  if (y > 0.01) return -log1p(-y);
  return y * (1 + y * (1 / 2. + y * (1 / 3. + y * (1 / 4. + y * (1 / 5. + y * (1 / 6. + y * (1 / 7.)))))));
}
#endif

static double sat_pressure_ratio(double first, double second) {
  if (first <= TRIPLE_POINT || second <= TRIPLE_POINT) return sat_pressure(first) / sat_pressure(second);
  double a = first + KELVIN, b = second + KELVIN;
#ifdef SHORT_FORMS
  double fit = -4.8640239e-2 + 4.1764768e-5 * (a + b) - 1.4452093e-8 * (a * a + a * b + b * b);
  return exp((a - b) * (5.8002206e3 / (a * b) + fit) + 6.5459673 * log_of_ratio(a, b));
#else
  double fit = -4.8640239e-2 * (a - b) + 4.1764768e-5 * (a * a - b * b) - 1.4452093e-8 * (a * a * a - b * b * b);
  return exp(-5.8002206e3 * (1 / a - 1 / b) + fit + 6.5459673 * log(a / b));
#endif
}

/* ---- growth ---- */

static double growth_percent(double T) {
  if (T > 20) return LEAST_PERCENT;
  if (T <= 0) return 100;
  return fmax(LEAST_PERCENT, ((-0.00267 * T + 0.16) * T - 3.13) * T + 100);
}

static double approached(double from, double ceiling, double rt) {
#ifdef SHORT_FORMS
  return from + less_log(-expm1(BEND * (from - ceiling)) * less_exp(BEND * rt)) / BEND;
#else
  return ceiling - log1p(expm1(BEND * (ceiling - from)) * exp(-BEND * rt)) / BEND;
#endif
}

static double growth_needed(double from, double to, double ceiling) {
  return log(expm1(BEND * (ceiling - from)) / expm1(BEND * (ceiling - to))) / BEND;
}

static double after_growth(double index, double T, double percent, double critical, double hours) {
  double x = critical == 100 ? 0 : (critical - percent) / (critical - 100);
  double ceiling = fmax(0, CEILING_A + CEILING_B * x - CEILING_C * x * x);
  if (index >= ceiling) return index;
  double weeks = exp(-0.68 * log(T) - 13.9 * log(percent) + 66.02);
  double per_rate = 1 / (7 * 24 * weeks);
  if (index >= 1) return approached(index, ceiling, RATE_FROM_ONE * per_rate * hours);
  double below = approached(index, ceiling, RATE_BELOW_ONE * per_rate * hours);
  if (below <= 1) return below;
  double to_one = growth_needed(index, 1, ceiling) / (RATE_BELOW_ONE * per_rate);
  return approached(1, ceiling, RATE_FROM_ONE * per_rate * (hours - to_one));
}

static double decline_after(double dry_hours) {
  return (0.032 * fmin(dry_hours, 6) + 0.016 * fmax(0, dry_hours - 24)) / 24;
}

static double dose_per_day(double T, double relhum) {
  if (T <= 0.1) return -0.5;
  double percent = 100 * relhum;
  double by_humidity = percent > 75   ? exp(15.53 * log(percent / 90))
                       : percent > 60 ? -2.7 + 1.1 * percent / 30
                                      : -0.5;
  return by_humidity * exp(0.74 * log(T / 20));
}

/* ---- meters ---- */

typedef struct {
  double enough, hours, longest_hours, longest_from, first_lit, run_hours, run_from;
} Run;

static Run run_of(double enough) { return (Run){enough, 0, 0, NAN, NAN, 0, NAN}; }

static void run_step(Run *run, int is_on, double from, double hours) {
  if (!is_on) {
    run->run_hours = 0;
    return;
  }
  if (run->run_hours == 0) run->run_from = from;
  run->run_hours += hours;
  run->hours += hours;
  if (run->run_hours > run->longest_hours) {
    run->longest_hours = run->run_hours;
    run->longest_from = run->run_from;
  }
  if (isnan(run->first_lit) && run->run_hours >= run->enough - ROUNDING) run->first_lit = run->run_from + run->enough;
}

typedef struct {
  double dose, highest, highest_at, hours, warmth, damp;
} Dose;

static void dose_settle(Dose *dose, double at) {
  double mean = fmin(dose->warmth / dose->hours, DOSE_WARMEST);
  double relhum = fmin(1, dose->damp / dose->hours);
  dose->dose = fmax(0, dose->dose + dose_per_day(mean, relhum) * dose->hours / 24);
  if (dose->dose > dose->highest) {
    dose->highest = dose->dose;
    dose->highest_at = at;
  }
  dose->hours = dose->warmth = dose->damp = 0;
}

static void dose_step(Dose *dose, double T, double relhum, double from, double hours) {
  double at = from;
  for (double left = hours; left > 0;) {
    double part = fmin(left, DOSE_HOURS - dose->hours);
    dose->hours += part;
    dose->warmth += T * part;
    dose->damp += relhum * part;
    left -= part;
    at += part;
    if (dose->hours >= DOSE_HOURS - ROUNDING) dose_settle(dose, at);
  }
}

/* ---- the watch ---- */

typedef struct {
  Run damp, critical, at_one, visible;
  double excess_hours;
  double index, index_highest, index_highest_at, dry_hours;
  Dose dose;
  double dampest_at, dampest_relhum, dampest_T, furthest_at, furthest_relhum, furthest_T, furthest_excess;
  double stretches, stretch_hours, used, missing, over_read, too_warm;
} Watch;

static void watch_step(Watch *w, double from, double T, double relhum, double excess, double hours) {
  run_step(&w->damp, relhum >= DAMP_RELHUM, from, hours);
  run_step(&w->critical, excess > 0, from, hours);
  if (excess > 0) w->excess_hours += excess * hours;
  double percent = 100 * relhum;
#ifdef SHORT_FORMS
  double critical = percent >= LEAST_PERCENT ? growth_percent(T) : 100;
#else
  double critical = growth_percent(T);
#endif
  if (T > 0 && T < 50 && percent >= critical) {
    w->index = after_growth(w->index, T, percent, critical, hours);
    w->dry_hours = 0;
    if (w->index > w->index_highest) {
      w->index_highest = w->index;
      w->index_highest_at = from + hours;
    }
  } else {
    if (w->index > 0)
      w->index = fmax(0, w->index - DECLINE * (decline_after(w->dry_hours + hours) - decline_after(w->dry_hours)));
    w->dry_hours += hours;
  }
  run_step(&w->at_one, w->index >= 1, from + hours, hours);
  run_step(&w->visible, w->index >= 3, from + hours, hours);
  dose_step(&w->dose, T, relhum, from, hours);
}

static void end_stretch(Watch *w, double from, double at) {
  if (w->dose.hours > ROUNDING) dose_settle(&w->dose, at);
  w->dose.dose = 0;
  w->stretches++;
  w->stretch_hours += at - from;
}

static void refuse(const char *what, double got, size_t n) {
  fprintf(stderr, "%s of reading %zu is %g\n", what, n + 1, got);
  exit(2);
}

static Watch watch(size_t n, const double *hours, const double *air, const double *relhum, const double *surface) {
  Watch w = {.damp = run_of(DAMP_HOURS), .critical = run_of(0), .at_one = run_of(0), .visible = run_of(0)};
  w.index_highest_at = w.dose.highest_at = NAN;
  w.dampest_relhum = -1.5;
  w.furthest_excess = -2.5;
  double at = NAN, T = NAN, phi = NAN, excess = NAN, stretch_from = NAN, zero = hours[0];
  for (size_t i = 0; i < n; i++) {
    double given = relhum[i], wall = surface[i], dry_bulb = air[i], now = hours[i] - zero;
    if (isnan(dry_bulb + given + wall)) {
      w.missing++;
      continue;
    }
    if (given > 1) w.over_read = 1;
    if (now <= at) refuse("hours", now, i);
    if (!(dry_bulb >= -60 && dry_bulb <= 90)) refuse("temperature", dry_bulb, i);
    if (!(wall >= -60 && wall <= 90)) refuse("surface", wall, i);
    if (!(given >= 0 && given <= OVER_READ)) refuse("relative humidity", given, i);
    if (now - at <= LONGEST_STEP) {
      watch_step(&w, at, T, phi, excess, now - at);
    } else {
      if (!isnan(at)) {
        end_stretch(&w, stretch_from, at);
        w.damp.run_hours = w.critical.run_hours = w.at_one.run_hours = w.visible.run_hours = 0;
        w.index = w.dry_hours = 0;
      }
      stretch_from = now;
    }
    phi = fmin(1, given);
    if (wall < dry_bulb) phi = fmin(1, phi * sat_pressure_ratio(dry_bulb, wall));
    T = fmin(dry_bulb, wall);
    if (T > PARABOLA_HIGH) w.too_warm = 1;
    double held = fmin(PARABOLA_HIGH, fmax(PARABOLA_LOW, T));
    excess = phi - fmin(1, (105 + CURVATURE * (held * held - 54 * held)) / 100);
    at = now;
    if (phi > w.dampest_relhum) {
      w.dampest_at = at;
      w.dampest_relhum = phi;
      w.dampest_T = T;
    }
    if (excess > w.furthest_excess) {
      w.furthest_at = at;
      w.furthest_relhum = phi;
      w.furthest_T = T;
      w.furthest_excess = excess;
    }
    w.used++;
  }
  if (!isnan(at)) end_stretch(&w, stretch_from, at);
  return w;
}

/* ---- reading, timing, printing ---- */

static double *read_doubles(const char *path, size_t *count) {
  FILE *file = fopen(path, "rb");
  if (!file || fseek(file, 0, SEEK_END)) return NULL;
  *count = (size_t)ftell(file) / sizeof(double);
  rewind(file);
  double *all = malloc(*count * sizeof(double));
  if (all && fread(all, sizeof(double), *count, file) != *count) return NULL;
  fclose(file);
  return all;
}

static double seconds_of(clockid_t clock) {
  struct timespec now;
  clock_gettime(clock, &now);
  return now.tv_sec + 1e-9 * now.tv_nsec;
}

static double plain_sum(const double *all, size_t n) {
  double sum = 0;
  for (size_t i = 0; i < n; i++) sum += all[i] == all[i] ? all[i] : 0;
  return sum;
}

static void print_list(const char *name, const double *list, int n) {
  printf("\"%s\":[", name);
  for (int i = 0; i < n; i++) printf("%s%.9f", i ? "," : "", list[i]);
  printf("],");
}

static void print_value(const char *name, double value, const char *after) {
  if (isnan(value))
    printf("\"%s\":null%s", name, after);
  else
    printf("\"%s\":%.17g%s", name, value, after);
}

static void print_run(const char *name, const Run *run) {
  printf("\"%s\":{", name);
  print_value("hours", run->hours, ",");
  print_value("longestHours", run->longest_hours, ",");
  print_value("longestFrom", run->longest_from, ",");
  print_value("firstLit", run->first_lit, ",");
  print_value("runHours", run->run_hours, "},");
}

static void print_watch(const Watch *w, const char *after) {
  printf("{");
  print_run("damp", &w->damp);
  print_run("critical", &w->critical);
  print_run("atOne", &w->at_one);
  print_value("firstVisible", w->visible.first_lit, ",");
  print_value("excessHours", w->excess_hours, ",");
  print_value("indexHighest", w->index_highest, ",");
  print_value("indexHighestAt", w->index_highest_at, ",");
  print_value("indexAtEnd", w->index, ",");
  print_value("doseHighest", w->dose.highest, ",");
  print_value("doseHighestAt", w->dose.highest_at, ",");
  print_value("dampestAt", w->dampest_at, ",");
  print_value("dampestRelHum", w->dampest_relhum, ",");
  print_value("dampestT", w->dampest_T, ",");
  print_value("furthestAt", w->furthest_at, ",");
  print_value("furthestRelHum", w->furthest_relhum, ",");
  print_value("furthestT", w->furthest_T, ",");
  print_value("furthestExcess", w->furthest_excess, ",");
  print_value("stretches", w->stretches, ",");
  print_value("stretchHours", w->stretch_hours, ",");
  print_value("overRead", w->over_read, ",");
  print_value("tooWarm", w->too_warm, ",");
  print_value("used", w->used, ",");
  print_value("missing", w->missing, "}");
  printf("%s", after);
}

int main(int argc, char **argv) {
  size_t count = 0;
  double *all = argc == 3 ? read_doubles(argv[1], &count) : NULL;
  if (!all || count < 2) {
    fprintf(stderr, "use: mould_watch readings.bin repeats\n");
    return 1;
  }
  int loggers = (int)all[0], repeats = atoi(argv[2]);
  size_t n = (size_t)all[1];
  Watch *watches = malloc(loggers * sizeof(Watch));
  double *times = malloc(4 * repeats * sizeof(double)), sum = 0;
  for (int r = 0; r < repeats; r++) {
    double cpu = seconds_of(CLOCK_PROCESS_CPUTIME_ID), wall = seconds_of(CLOCK_MONOTONIC);
    for (int k = 0; k < loggers; k++) {
      const double *hours = all + 2 + 4 * n * k;
      watches[k] = watch(n, hours, hours + n, hours + 2 * n, hours + 3 * n);
    }
    times[r] = seconds_of(CLOCK_PROCESS_CPUTIME_ID) - cpu;
    times[repeats + r] = seconds_of(CLOCK_MONOTONIC) - wall;
    cpu = seconds_of(CLOCK_PROCESS_CPUTIME_ID), wall = seconds_of(CLOCK_MONOTONIC);
    sum = plain_sum(all + 2, 4 * n * loggers);
    times[2 * repeats + r] = seconds_of(CLOCK_PROCESS_CPUTIME_ID) - cpu;
    times[3 * repeats + r] = seconds_of(CLOCK_MONOTONIC) - wall;
  }
  printf("{");
  print_list("cpu", times, repeats);
  print_list("wall", times + repeats, repeats);
  print_list("sumCpu", times + 2 * repeats, repeats);
  print_list("sumWall", times + 3 * repeats, repeats);
  print_value("sum", sum, ",");
  printf("\"watches\":[");
  for (int k = 0; k < loggers; k++) print_watch(&watches[k], k + 1 < loggers ? "," : "");
  printf("]}\n");
  return 0;
}
