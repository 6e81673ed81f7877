/// \file
/// One step of Luther's explicit sixth-order Runge-Kutta method.
///
/// Chosen because its end weights are those of the five-point Lobatto rule (9, 49, 64, 49, 9)/180:
/// a line's slope is nearly linear in the variables used here, and then positions come out of a
/// quadrature of order eight. Source: H. A. Luther, An explicit sixth-order Runge-Kutta formula,
/// Mathematics of Computation 22 (1968) 434. The order is measured in
/// tests/engine/tow/luther6_test.cpp.
#pragma once

#include <array>
#include <cstddef>

namespace offplumb::tow {

template <std::size_t N>
using State = std::array<double, N>;

/// y + h (c0 k0 + c1 k1 + ...), term by term.
template <std::size_t N, std::size_t M>
State<N> Combine(const State<N>& y, double h, const std::array<double, M>& c,
                 const std::array<State<N>, 7>& k) {
  State<N> out = y;
  for (std::size_t j = 0; j < M; ++j) {
    if (c[j] == 0) continue;
    const double factor = h * c[j];
    for (std::size_t i = 0; i < N; ++i) out[i] += factor * k[j][i];
  }
  return out;
}

/// \param f  autonomous right-hand side, State<N> f(const State<N>&).
/// \param y  state at the start. \param h step, of either sign.
/// \return the state after the step; local error O(h^7).
///
/// Tableau, q = sqrt(21):
///   k1 = f(y)
///   k2 : 1                                                                          node 1
///   k3 : (3, 1)/8                                                                   node 1/2
///   k4 : (8, 2, 8)/27                                                               node 2/3
///   k5 : (3(3q-7), -8(7-q), 48(7-q), -3(21-q))/392                                  node (7-q)/14
///   k6 : (-5(231+51q), -40(7+q), -320q, 3(21+121q), 392(6+q))/1960                  node (7+q)/14
///   k7 : (15(22+7q), 120, 40(7q-5), -63(3q-2), -14(49+9q), 70(7-q))/180             node 1
///   y1 = y + h (9 k1 + 64 k3 + 49 k5 + 49 k6 + 9 k7)/180
template <std::size_t N, typename F>
State<N> Luther6Step(const F& f, const State<N>& y, double h) {
  constexpr double q = 4.58257569495584000659;
  static constexpr std::array<double, 1> a2{1.0};
  static constexpr std::array<double, 2> a3{3.0 / 8, 1.0 / 8};
  static constexpr std::array<double, 3> a4{8.0 / 27, 2.0 / 27, 8.0 / 27};
  static constexpr std::array<double, 4> a5{3 * (3 * q - 7) / 392, -8 * (7 - q) / 392,
                                            48 * (7 - q) / 392, -3 * (21 - q) / 392};
  static constexpr std::array<double, 5> a6{-5 * (231 + 51 * q) / 1960, -40 * (7 + q) / 1960,
                                            -320 * q / 1960, 3 * (21 + 121 * q) / 1960,
                                            392 * (6 + q) / 1960};
  static constexpr std::array<double, 6> a7{15 * (22 + 7 * q) / 180,  120.0 / 180,
                                            40 * (7 * q - 5) / 180,   -63 * (3 * q - 2) / 180,
                                            -14 * (49 + 9 * q) / 180, 70 * (7 - q) / 180};
  static constexpr std::array<double, 7> b{9.0 / 180,  0,          64.0 / 180, 0,
                                           49.0 / 180, 49.0 / 180, 9.0 / 180};
  std::array<State<N>, 7> k;
  k[0] = f(y);
  k[1] = f(Combine(y, h, a2, k));
  k[2] = f(Combine(y, h, a3, k));
  k[3] = f(Combine(y, h, a4, k));
  k[4] = f(Combine(y, h, a5, k));
  k[5] = f(Combine(y, h, a6, k));
  k[6] = f(Combine(y, h, a7, k));
  return Combine(y, h, b, k);
}

}  // namespace offplumb::tow
