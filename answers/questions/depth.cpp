#include "answers/questions/depth.h"

#include <algorithm>
#include <utility>

#include "answers/questions/cautions.h"
#include "answers/questions/notes.h"
#include "answers/questions/sound.h"

namespace offplumb::answers {
namespace {

bool AllSound(plan::RiggerFigures<plan::Band> figures) {
  const auto fields = plan::Fields(figures);
  return std::all_of(fields.begin(), fields.end(),
                     [](const plan::Band* field) { return Sound(*field); });
}

Expected<void> CheckRiggers(const std::vector<tackle::Rigger>& riggers, double count_m) {
  for (const tackle::Rigger& rigger : riggers) {
    auto checked = plan::CheckRigger(rigger);
    if (checked) checked = plan::CheckCount(rigger, count_m);
    if (!checked) return checked;
  }
  return {};
}

Expected<void> FindAll(DepthAnswer& answer, const Progress& progress) {
  const auto ensemble = MakeEnsemble(answer.request.wanted);
  for (const tackle::Rigger& rigger : answer.rigged) {
    auto depth =
        plan::FindDepths(rigger, answer.conditions, answer.request.count_m, Pointer(ensemble));
    if (!depth) return tl::unexpected<Problem>(depth.error());
    if (!AllSound(depth->figures)) return UnsoundFigure(rigger.name);
    answer.riggers.push_back(std::move(*depth));
    if (progress) {
      progress(static_cast<double>(answer.riggers.size()) /
               static_cast<double>(answer.rigged.size()));
    }
  }
  return {};
}

Remarks Remark(const DepthAnswer& answer) {
  const DepthRequest& request = answer.request;
  Remarks remarks;
  remarks.cautions = CautionsFor(Question::kDepth);
  remarks.notes =
      NotesOnSetting(request.rig, request.sea, request.wanted, answer.rigged, answer.conditions);
  for (std::size_t i = 0; i < answer.riggers.size(); ++i) {
    AddNew(remarks.notes, NotesOnShape(answer.rigged[i], answer.conditions, answer.riggers[i],
                                       request.wanted.units));
  }
  return remarks;
}

}  // namespace

Expected<DepthAnswer> Answer(const DepthRequest& request, const Progress& progress) {
  DepthAnswer answer;
  answer.request = request;
  auto setting = MakeSetting(request.rig, request.sea);
  if (!setting) return tl::unexpected<Problem>(setting.error());
  answer.rigged = std::move(setting->riggers);
  answer.conditions = std::move(setting->conditions);
  auto done = CheckRiggers(answer.rigged, request.count_m);
  if (done) done = FindAll(answer, progress);
  if (!done) return tl::unexpected<Problem>(done.error());
  answer.dominant = answer.riggers.front().dominant;
  answer.remarks = Remark(answer);
  return answer;
}

}  // namespace offplumb::answers
