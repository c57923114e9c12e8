/*
 * The scheme of src/core/flow once more, in C, for one purpose: to see how near the TypeScript comes to what the
 * same arithmetic costs when compiled (cc -O3). Same loops in the same order; a die with closed ends, metal friction,
 * steady turning, no sealed gas. Reads a case written by bench.ts, runs it, prints volumes and time.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define G 9.81
#define DRY 2e-5
#define SKIN 1e-6
#define FULL (1 - 1e-12)

static int n, n_rims;
static double *x, *bL, *bR, *cL, *cR, *B, *vmax, *path, *fcos, *fsin_, *sill, *ceil_, *fw, *fpath, *step_;
static double *rim_cell, *rim_x, *rim_y;
static double *V, *eta, *h, *hs, *u, *uo, *q, *A, *Ab, *adv, *push, *a, *zf, *hold, *pull, *t, *rhs, *diag, *res, *sw, *upd, *trial, *chg;
static unsigned char *full;
static double *z1, *z2, *z3, *z4, *w2, *w3, *v2, *k12, *k23, *k34;
static double px, py, nu, drag, so, ss, theta, largest, spilled;
static int gate_on;
static long steps, iterations, failed;

static double *zeros(int k) { return calloc((size_t)k, sizeof(double)); }
static double *get(FILE *f, int k) {
  double *p = malloc(sizeof(double) * (size_t)(k > 0 ? k : 1));
  if (k > 0 && fread(p, sizeof(double), (size_t)k, f) != (size_t)k) exit(3);
  return p;
}
static inline double cl(double v, double lo, double hi) { return v < lo ? lo : v > hi ? hi : v; }
static inline double minmod(double p, double r) { return p * r <= 0 ? 0 : fabs(p) < fabs(r) ? p : r; }

static double level_of(int i, double v) {
  if (v <= 0) return z1[i];
  if (v >= vmax[i]) return z4[i];
  double low = w2[i] * (z2[i] - z1[i]) / 2;
  if (v < low) return z1[i] + sqrt(2 * v * (z2[i] - z1[i]) / w2[i]);
  double high = w3[i] * (z4[i] - z3[i]) / 2;
  if (v <= vmax[i] - high && z3[i] > z2[i]) {
    double rest = v - low, k = (w3[i] - w2[i]) / (z3[i] - z2[i]);
    return z2[i] + 2 * rest / (w2[i] + sqrt(fmax(0, w2[i] * w2[i] + 2 * k * rest)));
  }
  return w3[i] > 0 ? z4[i] - sqrt(2 * (vmax[i] - v) * (z4[i] - z3[i]) / w3[i]) : z4[i];
}
static double under(int i, double e) {
  if (e <= z1[i]) return 0;
  if (e >= z4[i]) return vmax[i];
  if (e < z2[i]) return k12[i] * (e - z1[i]) * (e - z1[i]) / 2;
  if (e <= z3[i]) { double r = e - z2[i]; return v2[i] + (w2[i] + k23[i] * r / 2) * r; }
  return vmax[i] - k34[i] * (z4[i] - e) * (z4[i] - e) / 2;
}
static void levels(double s, double c) {
  for (int i = 0; i < n; i++) {
    double a0 = x[i] * s + bL[i] * c, a1 = x[i + 1] * s + bR[i] * c, a2 = x[i + 1] * s + cR[i] * c, a3 = x[i] * s + cL[i] * c;
    int right = a1 < a0;
    double bottom = right ? a1 : a0, top = fmax(a2, a3), low = right ? a0 : a1, high = fmin(a2, a3), wl, wh, dx = x[i + 1] - x[i];
    if (low <= high) wl = wh = B[i] * dx / c;
    else {
      double sl = low; low = high; high = sl;
      double fall = fabs(s + (bR[i] - bL[i]) / dx * c), roof = fabs(s + (cR[i] - cL[i]) / dx * c);
      wl = B[i] * (right ? cR[i] - bR[i] : cL[i] - bL[i]) / fall;
      wh = B[i] * (right ? cL[i] - bL[i] : cR[i] - bR[i]) / roof;
    }
    z1[i] = bottom; z2[i] = low; z3[i] = high; z4[i] = top; w2[i] = wl; w3[i] = wh;
    v2[i] = wl * (low - bottom) / 2;
    k12[i] = low > bottom ? wl / (low - bottom) : 0;
    k23[i] = high > low ? (wh - wl) / (high - low) : 0;
    k34[i] = top > high ? wh / (top - high) : 0;
  }
}
static void rotate(double s, double c) {
  for (int i = 0; i < n; i++) {
    full[i] = V[i] >= vmax[i] * FULL;
    if (full[i]) eta[i] -= z4[i];
    h[i] = V[i] / (B[i] * (x[i + 1] - x[i]));
  }
  levels(s, c);
  for (int i = 0; i < n; i++) eta[i] = full[i] ? eta[i] + z4[i] : level_of(i, V[i]);
  for (int j = 0; j <= n; j++) zf[j] = x[j] * s + sill[j] * c;
  hs[0] = hs[n - 1] = 0;
  for (int i = 1; i < n - 1; i++)
    hs[i] = step_[i] != 0 || step_[i + 1] != 0 || h[i - 1] < DRY || h[i] < DRY || h[i + 1] < DRY ? 0 : minmod(h[i] - h[i - 1], h[i + 1] - h[i]);
}
static inline double mid(double half, double changed, double carried, double metal) {
  return half == 0 ? 0 : half + minmod(changed / 2, carried < metal ? -half * carried / metal : -half);
}

static void advect(double dt) {
  for (int j = 1; j < n; j++) {
    Ab[j] = A[j];
    double here = (V[j - 1] + V[j]) / (2 * fpath[j]), c = u[j], m = (V[j - 1] + V[j]) / 2;
    A[j] = here;
    if (here < 1e-14) { adv[j] = 0; continue; }
    double qm = (q[j - 1] + q[j]) / 2, qp = (q[j] + q[j + 1]) / 2;
    if (qm <= 0 && qp >= 0) { adv[j] = c; continue; }
    double l = u[j - 1], r = u[j + 1], half = minmod(c - l, r - c) / 2, d = 0, lo = c, hi = c;
    if (qm > 0) {
      double hl = j > 1 ? minmod(l - u[j - 2], c - l) / 2 : 0;
      double ml = j > 1 ? (V[j - 2] + V[j - 1]) / 2 : V[0];
      if (qp > 0) d += qp * mid(half, c - uo[j], qp * dt, m);
      d -= qm * (l + mid(hl, l - uo[j - 1], qm * dt, ml) - c);
      if (l < lo) lo = l; else if (l > hi) hi = l;
    }
    if (qp < 0) {
      double hr = j < n - 1 ? minmod(r - c, u[j + 2] - r) / 2 : 0;
      double mr = j < n - 1 ? (V[j] + V[j + 1]) / 2 : V[j];
      d += qp * (r + mid(-hr, r - uo[j + 1], -qp * dt, mr) - c);
      if (qm < 0) d -= qm * mid(-half, c - uo[j], -qm * dt, m);
      if (r < lo) lo = r; else if (r > hi) hi = r;
    }
    adv[j] = cl(c - dt * d / (here * fpath[j]), lo, hi);
  }
  memcpy(uo, u, (n + 1) * sizeof *u);
}
static int front_gate(double *loss, double towards, double head, double drop, double height, double opening, double c, double sp, double dt) {
  double m = (head / opening - 0.9) / 0.2, blend = m <= 0 ? 0 : m >= 1 ? 1 : m * m * (3 - 2 * m);
  double open = so / (0.5 * height), slot = ss / height + G * opening / 2;
  double standing = fmax(0, fmin(head, height * fmax(c, 0.05))), h0 = standing + fmax(0, head - opening);
  *loss = dt * (open + (slot - open) * blend) / sp;
  return towards + dt * G * fmax(h0, drop) / sp > *loss;
}
static double weir(double e, double gn, double freeh) {
  double crit = 2 * e / (3 * gn);
  if (crit > freeh) return freeh * sqrt(fmax(0, 2 * (e - gn * freeh)));
  return pow(2 * e / 3, 1.5) / gn;
}
static void faces(double dt, double s, double c, double om) {
  double gn = G * fmax(c, 1e-3);
  for (int j = 1; j < n; j++) {
    int l = j - 1, r = j;
    a[j] = t[j] = push[j] = 0;
    if (V[l] <= 0 && V[r] <= 0) continue;
    double rise = eta[r] - eta[l], us = adv[j];
    int right = fabs(us) < 1e-7 ? rise < 0 : us > 0;
    if (right) { if (h[l] < DRY && h[r] >= DRY && rise > 0) right = 0; }
    else if (h[r] < DRY && h[l] >= DRY && rise < 0) right = 1;
    int up = right ? l : r, dn = right ? r : l;
    double freeh = ceil_[j] - sill[j];
    double tr = right ? h[l] + hs[l] / 2 + bR[l] - sill[j] : h[r] - hs[r] / 2 + bL[r] - sill[j];
    double hf = cl(tr, 0, freeh);
    if (hf < 1e-12) continue;
    double sl = fcos[up], sp = fpath[j];
    hf *= sl;
    int both = full[l] && full[r];
    double w = full[l] || full[r] ? 1 : theta;
    double cen = A[j] > 0 ? cl(1 + w * (A[j] - Ab[j]) / A[j], 1 / 1.5, 1.5) : 1;
    double fr = (both ? 12 : 3) * nu / (hf * hf) + (both ? 2 : 1) * drag * fabs(u[j]) / hf;
    double fac = 1 / (1 + dt * fr), p = us - dt * G * (1 - w) * cen * rise / sp;
    if (om != 0) {
      double ax = x[j] - px, ay = (bL[r] + bR[l]) / 2 - py;
      double swell = ((q[l] - q[r]) / (path[l] * B[l]) + (q[r] - q[r + 1]) / (path[r] * B[r])) / 2, reach = fabs(us);
      p += dt * (om * om * (ax * sl + ay * fsin_[up]) + 2 * om * cl(swell, -reach, reach));
    }
    if (gate_on && (h[l] > SKIN) != (h[r] > SKIN)) {
      int wl = h[l] > SKIN;
      double sg = wl ? 1 : -1, loss;
      int open = front_gate(&loss, sg * us, (wl ? eta[l] : eta[r]) - zf[j], -sg * rise, hf, fmax(freeh * c, 1e-12), c, sp, dt);
      if (!open) continue;
      p -= sg * loss;
    } else if (gate_on && !both) {
      int sg = r + 1 < n && h[r + 1] <= SKIN && h[r] > DRY ? 1 : l > 0 && h[l - 1] <= SKIN && h[l] > DRY ? -1 : 0;
      double tow = sg * (us - dt * G * rise / sp);
      if (sg && tow > 0) {
        int at = sg > 0 ? r : l;
        double head = fmax(0, eta[at] - (sg > 0 ? x[at + 1] * s + bR[at] * c : x[at] * s + bL[at] * c));
        double loss = dt * fmax(0, so - G * head * head / (2 * fmax(c, 0.05))) * fw[j] / (A[j] * sp);
        if (tow <= loss) continue;
        p -= sg * loss;
      }
    }
    double likely = fabs(us - dt * G * rise / sp);
    if (step_[j] != 0 && likely > 0) {
      double cm = right ? u[j - 1] : u[j + 1], e = G * (eta[up] - zf[j]) + cm * cm / 2;
      if (e <= 0) continue;
      double most = weir(e, gn, freeh);
      if (likely * hf > most) { hf = fmin(hf, 2 * e / (3 * gn)); fac *= fmin(1, most / hf / likely); }
    }
    if (h[up] < 0.5 * h[dn] && (rise < 0) == right && !both) {
      double b = fmax(fmax(fabs(u[j - 1]), fabs(u[j + 1])), fabs(us)), lim = sqrt(b * b + 2 * G * fabs(rise)) + 1e-3;
      if (likely > lim) fac *= lim / likely;
    }
    a[j] = hf * fw[j]; hold[j] = fac; pull[j] = w * cen * G; push[j] = p;
    t[j] = dt * dt * pull[j] * a[j] * fac / sp;
  }
}
static double assemble(void) {
  double worst = 0;
  for (int i = 0; i < n; i++) {
    double e = eta[i], vol = 0, ch = 0;
    if (e > z1[i]) {
      if (e >= z4[i]) vol = vmax[i];
      else if (e < z2[i]) { ch = k12[i] * (e - z1[i]); vol = ch * (e - z1[i]) / 2; }
      else if (e <= z3[i]) { double r = e - z2[i], b = k23[i] * r; ch = w2[i] + b; vol = v2[i] + (w2[i] + b / 2) * r; }
      else { ch = k34[i] * (z4[i] - e); vol = vmax[i] - ch * (z4[i] - e) / 2; }
    }
    double bal = vol - rhs[i], tot = ch + t[i] + t[i + 1];
    if (t[i] > 0) bal += t[i] * (e - eta[i - 1]);
    if (t[i + 1] > 0) bal += t[i + 1] * (e - eta[i + 1]);
    res[i] = tot > 0 ? bal : 0; diag[i] = tot > 0 ? tot : 1;
    if (tot > 0 && fabs(bal) > worst) worst = fabs(bal);
  }
  return worst;
}
/* Moves the levels; 1 when what the update's own bends leave is surely within the tolerance and no level passed a corner. */
static int settle(double tol, int exact) {
  int settled = exact;
  double sure = tol / 2;
  for (int i = 0; i < n; i++) {
    double e = eta[i], d = upd[i], to = e + d;
    if (e <= z1[i]) {
      if (to > z2[i]) to = (z2[i] + z3[i]) / 2;
      if (!(to <= z1[i])) settled = 0;
    } else if (e >= z4[i]) {
      if (to < z3[i]) to = (z2[i] + z3[i]) / 2;
      if (!(to >= z4[i])) settled = 0;
    } else if (settled) {
      if (e < z2[i]) settled = to >= z1[i] && to <= z2[i] && k12[i] * d * d <= sure;
      else if (e > z3[i]) settled = to >= z3[i] && to <= z4[i] && k34[i] * d * d <= sure;
      else settled = to >= z2[i] && to <= z3[i] && fabs(k23[i]) * d * d <= sure;
    }
    eta[i] = to;
  }
  return settled;
}
static int kept(void) {
  for (int i = 0; i < n; i++) chg[i] = eta[i] - trial[i];
  return 1;
}
static int solve(void) {
  double tol = 1e-12 * largest;
  memcpy(trial, eta, sizeof(double) * (size_t)n);
  for (int i = 0; i < n; i++) {
    if (V[i] < 1e-4 * vmax[i]) { if (rhs[i] > 0) eta[i] = level_of(i, rhs[i]); }
    else if (!full[i]) eta[i] += chg[i];
  }
  for (int k = 0; k < 14; k++) {
    double left = assemble();
    if (left <= tol) return kept();
    iterations++;
    int exact = 1;
    double p = diag[0];
    upd[0] = -res[0] / p;
    for (int i = 1; i < n; i++) {
      double ratio = t[i] / p;
      sw[i] = ratio;
      p = diag[i] - t[i] * ratio;
      if (p <= 1e-13 * diag[i]) { p = diag[i]; exact = 0; }
      upd[i] = (-res[i] + t[i] * upd[i - 1]) / p;
    }
    for (int i = n - 2; i >= 0; i--) upd[i] += sw[i + 1] * upd[i + 1];
    if (left <= 1e5 * tol) {
      if (settle(tol, exact)) return kept();
      continue;
    }
    for (int i = 0; i < n; i++) {
      double to = eta[i] + upd[i];
      eta[i] = (eta[i] <= z1[i] && to > z2[i]) || (eta[i] >= z4[i] && to < z3[i]) ? (z2[i] + z3[i]) / 2 : to;
    }
  }
  return assemble() <= tol;
}
static void pass(int f, int to) {
  if (V[f] < 0) { V[to] += V[f]; V[f] = 0; }
  else if (V[f] > vmax[f]) { V[to] += V[f] - vmax[f]; V[f] = vmax[f]; }
}
static void finish(double dt, double s, double c) {
  for (int j = 1; j < n; j++) {
    if (a[j] == 0) { u[j] = q[j] = 0; continue; }
    u[j] = hold[j] * (push[j] - dt * pull[j] * (eta[j] - eta[j - 1]) / fpath[j]);
    q[j] = a[j] * u[j];
  }
  for (int i = 0; i < n; i++) V[i] -= dt * (q[i + 1] - q[i]);
  for (int i = 0; i < n - 1; i++) pass(i, i + 1);
  for (int i = n - 1; i > 0; i--) pass(i, i - 1);
  for (int k = 0; k < n_rims; k++) {
    int i = (int)rim_cell[k];
    double rl = rim_x[k] * s + rim_y[k] * c, above = eta[i] - rl;
    if (above <= 0 || V[i] <= 0) continue;
    double out = fmax(0, fmin(V[i] - under(i, rl), pow(2.0 / 3 * above, 1.5) * sqrt(G) * B[i] * dt));
    V[i] -= out; spilled += out;
  }
}
static double step_length(void) {
  double quick = 0;
  for (int j = 1; j < n; j++) { double s = fabs(u[j]) / fpath[j]; if (s > quick) quick = s; }
  double wave = (x[n] - x[0]) / n / sqrt(G * 0.03);
  return fmin(fmin(1e-3, quick > 0 ? 0.5 / quick : 1e-3), wave);
}
int main(int argc, char **argv) {
  FILE *f = fopen(argv[1], "rb");
  if (!f || argc < 2) return 2;
  double *head = get(f, 18);
  n = (int)head[0]; n_rims = (int)head[1]; px = head[2]; py = head[3]; nu = head[4]; drag = head[5]; so = head[6]; ss = head[7];
  theta = head[8]; largest = head[9]; gate_on = (int)head[10];
  double start = head[11], end = head[12], rate = head[13], total = head[14];
  x = get(f, n + 1); bL = get(f, n); bR = get(f, n); cL = get(f, n); cR = get(f, n); B = get(f, n); vmax = get(f, n);
  path = get(f, n); fcos = get(f, n); fsin_ = get(f, n); sill = get(f, n + 1); ceil_ = get(f, n + 1); fw = get(f, n + 1);
  fpath = get(f, n + 1); step_ = get(f, n + 1); rim_cell = get(f, n_rims); rim_x = get(f, n_rims); rim_y = get(f, n_rims);
  double *V0 = get(f, n);
  double **cells[] = {&V, &eta, &h, &hs, &rhs, &diag, &res, &sw, &upd, &trial, &chg, &z1, &z2, &z3, &z4, &w2, &w3, &v2, &k12, &k23, &k34};
  for (unsigned k = 0; k < sizeof cells / sizeof *cells; k++) *cells[k] = zeros(n);
  double **fcs[] = {&u, &uo, &q, &A, &Ab, &adv, &push, &a, &zf, &hold, &pull, &t};
  for (unsigned k = 0; k < sizeof fcs / sizeof *fcs; k++) *fcs[k] = zeros(n + 1);
  full = calloc((size_t)n, 1);
  memcpy(V, V0, sizeof(double) * (size_t)n);
  levels(sin(start), fabs(cos(start)));
  for (int i = 0; i < n; i++) { eta[i] = level_of(i, V[i]); h[i] = V[i] / (B[i] * (x[i + 1] - x[i])); }
  for (int j = 1; j < n; j++) A[j] = (V[j - 1] + V[j]) / (2 * fpath[j]);
  clock_t begun = clock();
  double time = 0, turning = (start - end) / rate;
  while (time < total - 1e-9) {
    double target = time + 2e-3, left = 2e-3;
    while (left > 0) {
      double dt = left / ceil(left / step_length() - 1e-9), after = left - dt < 1e-12 ? target : target - (left - dt);
      double phi = after >= turning ? end : start - rate * after, s = sin(phi), c = fmax(0, cos(phi));
      rotate(s, c); advect(dt); faces(dt, s, c, after >= turning ? 0 : -rate);
      double in = 0;
      for (int i = 0; i < n; i++) { double out = i + 1 < n && a[i + 1] > 0 ? a[i + 1] * hold[i + 1] * push[i + 1] : 0; rhs[i] = V[i] - dt * (out - in); in = out; }
      if (!solve()) failed++;
      finish(dt, s, c);
      steps++; time = after; left = target - after;
    }
  }
  double seconds = (double)(clock() - begun) / CLOCKS_PER_SEC, sum = spilled;
  for (int i = 0; i < n; i++) sum += V[i];
  printf("{\"seconds\":%.6f,\"steps\":%ld,\"iterations\":%ld,\"failed\":%ld,\"metal\":%.17g,\"spilled\":%.17g,\"volumes\":[", seconds, steps, iterations, failed, sum, spilled);
  for (int i = 0; i < n; i++) printf("%s%.17g", i ? "," : "", V[i]);
  printf("]}\n");
  return 0;
}
