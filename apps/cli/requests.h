/// \file
/// From what was typed to requests: values read, files read, nothing solved yet.
#pragma once

#include <string>
#include <vector>

#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/two_way.h"
#include "apps/cli/arguments.h"
#include "ports/files/rig_file.h"

namespace offplumb::cli {

/// A request and the rig files it came from.
template <typename Request>
struct Asked {
  Request request;
  std::vector<ports::RigFile> rigs;
};

/// Each returns the first problem found in the flags or files: named by flag, or by file and line.
[[nodiscard]] Expected<Asked<answers::DepthRequest>> ReadDepthRequest(const Arguments& arguments);
[[nodiscard]] Expected<Asked<answers::CountRequest>> ReadCountRequest(const Arguments& arguments);
[[nodiscard]] Expected<Asked<answers::CardRequest>> ReadCardRequest(const Arguments& arguments);
[[nodiscard]] Expected<Asked<answers::CompareRequest>> ReadCompareRequest(
    const Arguments& arguments);
/// This one reads no rig.
[[nodiscard]] Expected<Asked<answers::TwoWayRequest>> ReadTwoWayRequest(const Arguments& arguments);

/// Adds file and line to a problem that lies in a rigger of these files.
void Locate(const std::vector<ports::RigFile>& rigs, Problem& problem);

}  // namespace offplumb::cli
