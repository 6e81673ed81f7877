/// \file
/// A whole tree solved with general-purpose libraries: the peer that the solver is measured
/// against.
///
/// The lines are followed by Boost.Numeric.Odeint (peer_line.h); the unknowns are found by Powell's
/// hybrid method with a Jacobian by differences, as in MINPACK (J. J. More, B. S. Garbow and K. E.
/// Hillstrom, 1980), from Eigen's unsupported modules. It starts from the same guess as the solver,
/// so that its time is that of the method and not of a bad start.
#pragma once

#include <vector>

#include "engine/tow/tree.h"

namespace offplumb::bench {

/// How finely the peer solves. The defaults leave about 1e-6 of the depth, the accuracy that is
/// aimed at.
struct PeerOptions {
  double line_tolerance = 1e-6;  ///< Of the integrator, relative and absolute (N, m).
  double root_tolerance = 1e-6;  ///< Of the unknowns, relative.
};

/// What the peer found.
struct PeerTree {
  bool found = false;
  double miss_m = 0;  ///< Norm of what is left of all misses.
  int passes = 0;     ///< Through the tree.
  Eigen::Vector3d ball_m = Eigen::Vector3d::Zero();
  std::vector<double> lure_depth_m;
};

[[nodiscard]] PeerTree SolvePeer(const tow::TreeProblem& problem, const PeerOptions& options = {});

}  // namespace offplumb::bench
