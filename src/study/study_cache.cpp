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
    Memo<SoundSlice, sound::SoundStudy> sound;
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
        return sight::study_sight(sight_input(study));
    });
    study.sound = memory_->sound.get(sound_slice(study), [&](const SoundSlice&) {
        return sound::study_sound(sound_input(study));
    });
    study.figures = evaluate_figures(study);
    study.findings = collect_findings(study);
    return study;
}

Study compute_study(std::shared_ptr<const room::Brief> brief) {
    return StudyCache().update(std::move(brief));
}

}  // namespace rakeline::study
