// SPDX-License-Identifier: MIT
#include "drawing/frequency_axis.hpp"

#include <array>
#include <cmath>

namespace rakeline::drawing {
namespace {

struct Octave {
    double frequency_hz;
    const char* name;
};

constexpr std::array kOctaves = {Octave{31.5, "31.5"}, Octave{63, "63"},   Octave{125, "125"},
                                 Octave{250, "250"},   Octave{500, "500"}, Octave{1000, "1k"},
                                 Octave{2000, "2k"},   Octave{4000, "4k"}, Octave{8000, "8k"},
                                 Octave{16000, "16k"}};

std::vector<Tick> every_other(std::vector<Tick> ticks) {
    for (std::size_t i = 1; i < ticks.size(); i += 2)
        ticks[i].text.clear();
    return ticks;
}

}  // namespace

double octaves(double frequency_hz) {
    return std::log2(frequency_hz / 1000.0);
}

Scale frequency_scale(double low_hz, double high_hz) {
    return {octaves(low_hz), octaves(high_hz)};
}

std::vector<Tick> octave_ticks(const Scale& scale) {
    std::vector<Tick> ticks;
    for (const Octave& octave : kOctaves) {
        const double at = octaves(octave.frequency_hz);
        if (at >= scale.low && at <= scale.high) ticks.push_back({at, octave.name});
    }
    return ticks;
}

void draw_frequency_axis(Chart& chart, const Scale& scale) {
    const std::vector<Tick> ticks = octave_ticks(scale);
    chart.uprights(ticks);
    constexpr double kLabel = 1.5;  ///< in rows of lettering, with air: "31.5"
    const double octave = chart.field().width() / (scale.high - scale.low);
    chart.ticks_below(octave < kLabel * chart.pitch() ? every_other(ticks) : ticks, 0);
    chart.title_below("frequency, Hz", 1);
}

}  // namespace rakeline::drawing
