#include "engine/tow/tree.h"

namespace offplumb::tow {

std::string_view Describe(SteadyStatus status) {
  switch (status) {
#define OFFPLUMB_ENTRY(name, text) \
  case SteadyStatus::name:         \
    return text;
    OFFPLUMB_STEADY_STATUS(OFFPLUMB_ENTRY)
#undef OFFPLUMB_ENTRY
  }
  return "";
}

}  // namespace offplumb::tow
