/// \file
/// The keys of each answer, written one after the other. Only for json.cpp.
#pragma once

#include "answers/questions/json.h"
#include "answers/questions/json_writer.h"

namespace offplumb::answers {

void Write(const DepthAnswer& answer, JsonWriter& json);
void Write(const CountAnswer& answer, JsonWriter& json);
void Write(const CardAnswer& answer, JsonWriter& json);
void Write(const CompareAnswer& answer, JsonWriter& json);
void Write(const TwoWayAnswer& answer, JsonWriter& json);

}  // namespace offplumb::answers
