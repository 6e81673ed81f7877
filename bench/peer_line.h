/// \file
/// One line followed by a general-purpose integrator: the inner half of the peer that the solver is
/// measured against.
///
/// Boost.Numeric.Odeint's Dormand-Prince 5(4) pair with error control and dense output, on the
/// force vector and the place in Cartesian axes against unstretched length. Nothing here is the
/// engine's but the plain values that say what is to be solved: the equations are written anew in
/// their textbook form.
#pragma once

#include <array>
#include <vector>

#include "engine/tow/loads.h"
#include "engine/water/current.h"

namespace offplumb::bench {

using Eigen::Vector3d;

/// Where a line has come to: the pull of what lies ahead of it, and its place.
struct PeerPoint {
  Vector3d pull_N = Vector3d::Zero();  ///< Along the way that the line is followed.
  Vector3d place_m = Vector3d::Zero();
};

/// Follows a line from its start over its unstretched length, through air and every layer of the
/// stream; edges are met by root finding (TOMS 748) on the dense output. \param tolerance relative
/// and absolute, of the integrator. \param point start in, end out. \return false when the
/// integrator gives up: the line whirls round in place or its tension vanishes.
bool FollowPeerLine(const water::Flow& flow, const tow::LineLoads& line, double length_m,
                    double tolerance, PeerPoint& point);

}  // namespace offplumb::bench
