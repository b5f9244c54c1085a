/* A year of hours on one plane in C, for comparison with the TypeScript kernel: the same equations (sun by straight lines
 * over the day, Perez 1990, Fresnel and Bouguer, cell temperature by mounting, AC limit), the same Seattle file.
 * cc -O2 -o yardstick yardstick.c -lm && ./yardstick FILE.epw   prints the best time of a year in ms, and the year's kWh. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define HOURS 8760
static const double RAD = M_PI / 180;
static const double FROM[7] = {1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2};
static const double F[8][6] = {
  {-0.0083117, 0.5877285, -0.0620636, -0.0596012, 0.0721249, -0.0220216},
  {0.1299457, 0.6825954, -0.1513752, -0.0189325, 0.065965, -0.0288748},
  {0.3296958, 0.4868735, -0.2210958, 0.055414, -0.0639588, -0.0260542},
  {0.5682053, 0.1874525, -0.295129, 0.1088631, -0.1519229, -0.0139754},
  {0.873028, -0.3920403, -0.3616149, 0.2255647, -0.4620442, 0.0012448},
  {1.1326077, -1.2367284, -0.4118494, 0.2877813, -0.8230357, 0.0558651},
  {1.0601591, -1.5999137, -0.3589221, 0.2642124, -1.127234, 0.1310694},
  {0.677747, -0.3272588, -0.2504286, 0.1561313, -1.3765031, 0.2506212}};

static double ghi[HOURS], dni[HOURS], dhi[HOURS], ta[HOURS], wind[HOURS], lat, lon, zone;

static double tau(double c) {
  double r = sqrt(1 - (1 - c * c) / (1.526 * 1.526));
  double s = (c - 1.526 * r) / (c + 1.526 * r), p = (1.526 * c - r) / (1.526 * c + r);
  return exp(-0.008 / r) * (1 - (s * s + p * p) / 2);
}

static void spencer(double day, double *delta, double *eot, double *e0) {
  double b = 2 * M_PI * day / 365;
  *delta = 0.006918 - 0.399912 * cos(b) + 0.070257 * sin(b) - 0.006758 * cos(2 * b) + 0.000907 * sin(2 * b) -
           0.002697 * cos(3 * b) + 0.00148 * sin(3 * b);
  *eot = 229.2 * (0.000075 + 0.001868 * cos(b) - 0.032077 * sin(b) - 0.014615 * cos(2 * b) - 0.04089 * sin(2 * b));
  *e0 = 1.00011 + 0.034221 * cos(b) + 0.00128 * sin(b) + 0.000719 * cos(2 * b) + 0.000077 * sin(2 * b);
}

static double year(double tilt, double azimuth) {
  double n[3] = {sin(azimuth * RAD) * sin(tilt * RAD), cos(azimuth * RAD) * sin(tilt * RAD), cos(tilt * RAD)};
  double dome = (1 + n[2]) / 2, view = 0.2 * (1 - n[2]) / 2, sint = sin(tilt * RAD), sum = 0;
  double sp = sin(lat * RAD), cp = cos(lat * RAD), t0 = tau(1);
  double skym = tau(cos((59.7 - 0.1388 * tilt + 0.001497 * tilt * tilt) * RAD)) / t0;
  double gm = tau(cos((90 - 0.5788 * tilt + 0.002693 * tilt * tilt) * RAD)) / t0;
  for (int d = 0; d < 365; d++) {
    double de, eq, e0, de1, eq1, x;
    spencer(d, &de, &eq, &e0);
    spencer(d + 1, &de1, &eq1, &x);
    double sd = sin(de), cd = cos(de), dsd = (sin(de1) - sd) / 24, dcd = (cos(de1) - cd) / 24, i0n = 1361.1 * e0;
    for (int h = 0; h < 24; h++) {
      int i = d * 24 + h;
      double t = h + 0.5, s = sd + dsd * t, c = cd + dcd * t;
      double w = (t - zone + lon / 15 + (eq + (eq1 - eq) * t / 24) / 60 - 12) * 15 * RAD;
      if (w > M_PI) w -= 2 * M_PI;
      if (w < -M_PI) w += 2 * M_PI;
      double ws = acos(fmin(1, fmax(-1, -sp * s / (cp * c)))), from = fmax(w - 7.5 * RAD, -ws), to = fmin(w + 7.5 * RAD, ws);
      if (to <= from) continue;
      w = (from + to) / 2;
      double cw = cos(w), up = fmin(1, fmax(1e-6, sp * s + cp * c * cw)), z = acos(up);
      double ci = -c * sin(w) * n[0] + (cp * s - sp * c * cw) * n[1] + up * n[2];
      double am = 1 / (up + 0.50572 * pow(96.07995 - z / RAD, -1.6364)), disc = 0, dm = 0, hz = 0, D = dhi[i], B = dni[i];
      if (D > 0) {
        double k = 1.041 * z * z * z, eps = ((D + B) / D + k) / (1 + k), br = D * am / i0n;
        int b = 0;
        while (b < 7 && eps >= FROM[b]) b++;
        double f1 = F[b][0] + F[b][1] * br + F[b][2] * z, f2 = F[b][3] + F[b][4] * br + F[b][5] * z;
        if (f1 < 0) f1 = 0;
        disc = D * f1 / fmax(up, 0.0871557), dm = D * (1 - f1), hz = D * f2;
      }
      double sun = ci > 0 ? (B + disc) * ci : 0, sky = fmax(0, dm * dome + hz * sint), gr = ghi[i] * view;
      double in = (ci > 0 ? sun * tau(ci) / t0 : 0) + sky * skym + gr * gm;
      double cell = ta[i] + (sun + sky + gr) * (exp(-2.98 - 0.0471 * wind[i]) + 0.001);
      double dim = in > 0 ? 1 + 0.018640 * log(in / 1000) : 1;
      double dc = in / 1000 * dim * (1 - 0.0035 * (cell - 25));
      sum += fmin(0.875, fmax(0, dc) * 0.97);
    }
  }
  return sum;
}

int main(int argc, char **argv) {
  FILE *f = fopen(argv[argc - 1], "r");
  char line[4096];
  if (!f) return 1;
  for (int k = 0; k < 8; k++) {
    if (!fgets(line, sizeof line, f)) return 1;
    if (k) continue;
    char *p = line;
    for (int j = 0; j < 6; j++) p = strchr(p, ',') + 1;
    sscanf(p, "%lf,%lf,%lf", &lat, &lon, &zone);
  }
  for (int i = 0; i < HOURS && fgets(line, sizeof line, f); i++) {
    char *p = line;
    for (int j = 0; p; j++) {
      if (j == 6) ta[i] = atof(p);
      if (j == 13) ghi[i] = atof(p);
      if (j == 14) dni[i] = atof(p);
      if (j == 15) dhi[i] = atof(p);
      if (j == 21) wind[i] = atof(p);
      p = strchr(p, ',');
      if (p) p++;
    }
  }
  double best = 1e9, kwh = 0;
  for (int r = 0; r < 200; r++) {
    struct timespec a, b;
    clock_gettime(CLOCK_MONOTONIC, &a);
    kwh = year(30, 200);
    clock_gettime(CLOCK_MONOTONIC, &b);
    double ms = (b.tv_sec - a.tv_sec) * 1e3 + (b.tv_nsec - a.tv_nsec) / 1e6;
    if (ms < best) best = ms;
  }
  printf("%.4f %.2f\n", best, kwh);
  return 0;
}
