// SPDX-License-Identifier: MIT
#include "study/figure_values.hpp"
#include "study/slices.hpp"

namespace rakeline::study {
namespace {

/// Keeps the last result with the value of the inputs that gave it. No dirty flags: the inputs are
/// compared, so nothing can be forgotten.
template <class Input, class Output>
class Memo {
public:
    template <class Compute>
    const Output& get(Input input, Compute compute) {
        if (!input_ || !(*input_ == input)) {
            output_ = compute(input);
            input_ = std::move(input);
        }
        return output_;
    }

private:
    std::optional<Input> input_;
    Output output_;
};

}  // namespace

struct StudyCache::Memory {
    Memo<room::SeatPlanInput, room::SeatPlan> seats;
    Memo<picture::PictureInput, picture::PictureStudy> picture;
    Memo<LightSlice, light::LightStudy> light;
    Memo<SightSlice, sight::SightStudy> sight;
    sight::SightCache sight_edits;
    Memo<SoundSlice, sound::SoundStudy> sound;
    Memo<HoleSlice, sound::HoleStudy> holes;
    std::optional<SightSlice> crowd_of;  ///< crowds read what the other sight figures do
    std::shared_ptr<const sight::CrowdStudy> crowd;
};

StudyCache::StudyCache() : memory_(std::make_unique<Memory>()) {}
StudyCache::~StudyCache() = default;
StudyCache::StudyCache(StudyCache&&) noexcept = default;
StudyCache& StudyCache::operator=(StudyCache&&) noexcept = default;

Study StudyCache::update(std::shared_ptr<const room::Brief> brief) {
    Study study;
    study.brief = std::move(brief);
    const room::Layout& layout = study.layout();
    study.seats = memory_->seats.get(seat_plan_slice(layout), room::place_seats);
    study.reference_seat = room::reference_seat(study.seats, layout.audience);
    study.picture =
        memory_->picture.get(picture_slice(layout, study.seats), picture::study_picture);
    study.light = memory_->light.get(light_slice(study), [&](const LightSlice& slice) {
        return light::study_light(slice.input, study.picture);
    });
    study.sight = memory_->sight.get(sight_slice(study), [&](const SightSlice&) {
        return memory_->sight_edits.update(sight_input(study));
    });
    study.sound = memory_->sound.get(sound_slice(study), [&](const SoundSlice&) {
        return sound::study_sound(sound_input(study));
    });
    study.holes = memory_->holes.get(
        hole_slice(study), [&](const HoleSlice&) { return sound::study_holes(hole_input(study)); });
    study.figures = evaluate_figures(study);
    study.findings = collect_findings(study);
    return study;
}

std::shared_ptr<const sight::CrowdStudy> StudyCache::known_crowd(const Study& study) const {
    if (!memory_->crowd_of || !(*memory_->crowd_of == sight_slice(study))) return nullptr;
    return memory_->crowd;
}

void StudyCache::remember_crowd(const Study& study,
                                std::shared_ptr<const sight::CrowdStudy> crowd) {
    memory_->crowd_of = sight_slice(study);
    memory_->crowd = std::move(crowd);
}

std::shared_ptr<const sight::CrowdStudy> sample_crowd(const Study& study,
                                                      const sight::CrowdRun& run) {
    auto crowd = sight::sample_crowds(sight_input(study), run);
    if (!crowd) return nullptr;
    return std::make_shared<const sight::CrowdStudy>(std::move(*crowd));
}

Study with_crowd(Study study, std::shared_ptr<const sight::CrowdStudy> crowd) {
    study.crowd = std::move(crowd);
    study.figures = evaluate_figures(study);
    study.findings = collect_findings(study);
    return study;
}

Study compute_study(std::shared_ptr<const room::Brief> brief) {
    return StudyCache().update(std::move(brief));
}

}  // namespace rakeline::study
