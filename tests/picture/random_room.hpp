// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "picture/picture_study.hpp"
#include "support/check.hpp"

#include <random>

/// Seeded rooms with one projector and one format, each a room that could be built.
namespace rakeline::tests {

class Dice {
public:
    explicit Dice(unsigned seed) : random_(seed) {}
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    bool one_in(int n) { return std::uniform_int_distribution<int>(1, n)(random_) == 1; }

private:
    std::mt19937 random_;
};

inline room::Screen random_screen(Dice& dice) {
    room::Screen s;
    s.width_m = dice.between(5.0, 22.0);
    s.height_m = s.width_m / dice.between(1.8, 2.5);
    s.sill_m = dice.between(0.6, 2.0);
    s.setback_m = dice.between(0.5, 2.0);
    s.radius_m = dice.one_in(2) ? 0.0 : s.width_m * dice.between(0.9, 4.0);
    s.tilt_rad = base::radians(dice.between(-2.0, 8.0));
    return s;
}

inline picture::PictureInput random_room(Dice& dice) {
    picture::PictureInput in;
    in.screen = random_screen(dice);
    const double aspect = dice.between(1.3, 2.5);
    in.formats = {{.name = "only", .aspect_ratio = aspect, .opening_width_m = {}}};
    in.booth_wall_back_m = in.screen.width_m * dice.between(1.2, 2.2);
    room::Projector p;
    p.kind = room::SourceKind::film;
    p.across_m = in.screen.width_m * dice.between(-0.2, 0.2);
    p.up_m = in.screen.sill_m + in.screen.height_m * dice.between(0.3, 1.5);
    p.back_m = in.booth_wall_back_m + dice.between(0.1, 0.8);
    p.aim.roll_rad = base::radians(dice.between(-3.0, 3.0));
    room::FormatUse use;
    use.format = "only";
    use.squeeze = dice.one_in(3) ? 2.0 : 1.0;
    use.gate_width_m = dice.between(0.010, 0.040);
    use.gate_height_m = use.gate_width_m * use.squeeze / aspect;
    use.shift_up = dice.between(-0.1, 0.1);
    use.shift_across = dice.between(-0.1, 0.1);
    p.formats = {use};
    in.projectors = {p};
    return in;
}

/// Its only picture. (Every room above makes one.)
inline picture::ProjectedPicture only_picture(const picture::PictureInput& in) {
    const picture::PictureStudy study = picture::study_picture(in);
    REQUIRE(study.pictures.size() == 1);
    return study.pictures.front();
}

/// A gate point by its place in the gate, -1 ... +1 each way.
inline glm::dvec2 gate_point(const picture::ProjectedPicture& p, double across, double up) {
    return 0.5 * p.gate_size_m * glm::dvec2(across, up);
}

}  // namespace rakeline::tests
