// SPDX-License-Identifier: MIT
#include "sight/people.hpp"

#include <cmath>

namespace rakeline::sight {
namespace {

/// Which number of a person's stream decides what.
enum Draw { comes, sex, eye, crown, breadth, place };

double drawn(const Measure& measure, double deviations) {
    return measure.mean_m + measure.deviation_m * deviations;
}

}  // namespace

Person draw_person(const base::CountedRandom& numbers, double women_fraction) {
    Person out;
    out.comes_at_fraction = numbers.uniform(comes);
    out.woman = numbers.uniform(sex) < women_fraction;
    out.place_in_range = numbers.uniform(place);
    const BodySurvey& survey = out.woman ? kWomen : kMen;
    const double of_eye = numbers.normal(eye);
    const double r = survey.eye_crown_correlation();
    const double of_crown = r * of_eye + std::sqrt(1.0 - r * r) * numbers.normal(crown);
    out.sitting_eye_m = drawn(survey.sitting_eye, of_eye);
    out.eye_to_crown_m = drawn(survey.eye_to_crown, of_crown);
    out.head_breadth_m = drawn(survey.head_breadth, numbers.normal(breadth));
    return out;
}

}  // namespace rakeline::sight
