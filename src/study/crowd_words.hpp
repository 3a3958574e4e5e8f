// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <string>

/// The crowd in sentences, from its figures. For studies with a crowd of a room that has seats.
namespace rakeline::study {

/// "In 2.39, 98 of 100 crowds leave every seat at least 95 % clear (95 % interval 93.0 to 99.4 %);
/// on average 99.6 % of the seats are."
std::string crowd_sentence(const Study& study, int format);

/// "2300 crowds of 96 people drawn: 50 % women, all seats taken, ..."
std::string people_sentence(const Study& study);

/// Where the cap on crowds came before the wanted precision; else empty.
std::string precision_sentence(const Study& study);

inline constexpr const char* kNotSampled = "not sampled";

}  // namespace rakeline::study
