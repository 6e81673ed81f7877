/// \file
/// Answers as CSV (RFC 4180): one head line, then one line a figure. The units are those chosen for
/// the text and stand in the head line or beside the figure. Columns: docs/command-line.md.
#pragma once

#include <string>

#include "answers/questions/card.h"
#include "answers/questions/compare.h"
#include "answers/questions/count.h"
#include "answers/questions/depth.h"
#include "answers/questions/two_way.h"

namespace offplumb::cli {

[[nodiscard]] std::string Csv(const answers::DepthAnswer& answer);
[[nodiscard]] std::string Csv(const answers::CountAnswer& answer);
[[nodiscard]] std::string Csv(const answers::CardAnswer& answer);
[[nodiscard]] std::string Csv(const answers::CompareAnswer& answer);
[[nodiscard]] std::string Csv(const answers::TwoWayAnswer& answer);

}  // namespace offplumb::cli
