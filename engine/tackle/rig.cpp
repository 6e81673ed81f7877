#include "engine/tackle/rig.h"

#include <cstddef>

namespace offplumb::tackle {
namespace {

/// One straight piece of the counter's table, in either direction.
double Through(double x, double x0, double y0, double x1, double y1) {
  return y0 + (x - x0) * (y1 - y0) / (x1 - x0);
}

double Interpolate(const std::vector<CounterMark>& marks, double x, double CounterMark::*from,
                   double CounterMark::*to) {
  if (marks.empty()) return x;
  CounterMark below{0, 0};
  for (std::size_t i = 0; i < marks.size(); ++i) {
    // The last piece runs on beyond its mark.
    if (x <= marks[i].*from || i + 1 == marks.size()) {
      return Through(x, below.*from, below.*to, marks[i].*from, marks[i].*to);
    }
    below = marks[i];
  }
  return x;
}

}  // namespace

double MeasuredCount_m(const std::vector<CounterMark>& marks, double count_m) {
  return Interpolate(marks, count_m, &CounterMark::reads_m, &CounterMark::measured_m);
}

double CounterReading_m(const std::vector<CounterMark>& marks, double measured_m) {
  return Interpolate(marks, measured_m, &CounterMark::measured_m, &CounterMark::reads_m);
}

}  // namespace offplumb::tackle
