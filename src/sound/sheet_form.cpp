// SPDX-License-Identifier: MIT
#include "sound/sheet_form.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::sound {
namespace {

constexpr std::array kInteractions = {HoleInteraction::fok, HoleInteraction::fok_by_area,
                                      HoleInteraction::ingard};
constexpr std::array kFaces = {FaceResistance::once, FaceResistance::fourfold};
constexpr std::array kTubes = {TubeForm::exact, TubeForm::maa};
constexpr std::size_t kForms = kInteractions.size() * kFaces.size() * kTubes.size();

constexpr std::array<SheetForm, kForms> all_forms() {
    std::array<SheetForm, kForms> forms{};
    std::size_t i = 0;
    for (const HoleInteraction interaction : kInteractions)
        for (const FaceResistance faces : kFaces)
            for (const TubeForm tube : kTubes)
                forms.at(i++) = {interaction, faces, tube};
    return forms;
}

const char* words_of(HoleInteraction interaction) {
    switch (interaction) {
        case HoleInteraction::fok:
            return "Fok's factor of d/b";
        case HoleInteraction::fok_by_area:
            return "Fok's factor of the open area's root";
        case HoleInteraction::ingard:
            return "Ingard's factor of the open area";
        case HoleInteraction::none:
            break;
    }
    return "no interaction";
}

/// Fok's series of its own argument, 0 to 1.
double fok_series(double xi) {
    const double xi3 = xi * xi * xi;
    const double tail =
        0.33818 + xi * xi * (0.06793 + xi * (-0.02287 + xi * (0.03015 - 0.01641 * xi)));
    return std::max(0.0, 1.0 - 1.4092 * xi + xi3 * tail);
}

}  // namespace

std::span<const SheetForm> published_forms() {
    static constexpr std::array<SheetForm, kForms> kAll = all_forms();
    return kAll;
}

std::string form_words(const SheetForm& form) {
    return std::string(words_of(form.interaction)) +
           (form.faces == FaceResistance::once ? ", faces counted once"
                                               : ", faces counted four times") +
           (form.tube == TubeForm::exact ? ", exact tube" : ", Maa's tube");
}

double fok_factor(double diameter_m, double pitch_m) {
    RL_ASSERT(diameter_m > 0.0 && pitch_m > 0.0);
    return fok_series(std::min(diameter_m / pitch_m, 1.0));
}

double interaction_factor(HoleInteraction interaction,
                          double diameter_m,
                          double pitch_m,
                          double open_area) {
    const double root = std::sqrt(std::min(open_area, 1.0));
    switch (interaction) {
        case HoleInteraction::fok:
            return fok_factor(diameter_m, pitch_m);
        case HoleInteraction::fok_by_area:
            return fok_series(root);
        case HoleInteraction::ingard:
            return 1.0 - 1.47 * root + 0.47 * root * root * root;
        case HoleInteraction::none:
            break;
    }
    return 1.0;
}

}  // namespace rakeline::sound
