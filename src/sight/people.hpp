// SPDX-License-Identifier: MIT
#pragma once

#include "base/counted_random.hpp"

/// People as they come, drawn from a published survey of bodies.
///
/// Source: ANSUR II (2012), 4082 men and 1986 women; means and sample standard deviations computed
/// from the public data of report NATICK/TR-15/007. They are soldiers, measured barefoot and bolt
/// upright on a hard seat: no children, few old people. Cushions, slumping and hats are no part of
/// the survey; what of that counts is in room::Crowd.
///
/// Taken as normal within each sex. How a person's measures hang together:
///  - sitting eye height with eye to crown: the survey's own correlation, which follows from its
///    three standard deviations, since sitting height is the sum of the two;
///  - head breadth with either: not published in the summary at hand, taken as zero. Its spread is
///    a tenth of the breadth's, so that little hangs on it.
///  - one person with the next: nothing; friends and families do not sit down by height.
namespace rakeline::sight {

struct Measure {
    double mean_m = 0.0;
    double deviation_m = 0.0;
};

struct BodySurvey {
    Measure sitting_height;  ///< seat to crown
    Measure sitting_eye;     ///< seat to eye
    Measure eye_to_crown;    ///< their difference, person by person
    Measure head_breadth;

    /// var(sitting height) = var(eye) + var(eye to crown) + 2 cov.
    constexpr double eye_crown_correlation() const {
        const auto variance = [](const Measure& m) { return m.deviation_m * m.deviation_m; };
        return (variance(sitting_height) - variance(sitting_eye) - variance(eye_to_crown)) /
               (2.0 * sitting_eye.deviation_m * eye_to_crown.deviation_m);
    }
};

inline constexpr BodySurvey kMen{.sitting_height = {0.91829, 0.03570},
                                 .sitting_eye = {0.80451, 0.03316},
                                 .eye_to_crown = {0.11378, 0.00899},
                                 .head_breadth = {0.15433, 0.00553}};
inline constexpr BodySurvey kWomen{.sitting_height = {0.85663, 0.03305},
                                   .sitting_eye = {0.74769, 0.03038},
                                   .eye_to_crown = {0.10894, 0.00816},
                                   .head_breadth = {0.14777, 0.00519}};

/// Who would sit in one seat, were it taken.
struct Person {
    bool woman = false;
    double sitting_eye_m = 0.0;  ///< over what is sat on, bolt upright
    double eye_to_crown_m = 0.0;
    double head_breadth_m = 0.0;
    double comes_at_fraction = 0.0;  ///< there when more than this share of the seats is taken
    double place_in_range = 0.0;     ///< 0 to 1, evenly: of wheelchair eyes from lowest to highest
    bool operator==(const Person&) const = default;
};

/// The same person for the same numbers. A change of `women_fraction` makes women of men or men of
/// women and leaves all else about them: as tall among their own sex, as likely to come.
Person draw_person(const base::CountedRandom& numbers, double women_fraction);

}  // namespace rakeline::sight
