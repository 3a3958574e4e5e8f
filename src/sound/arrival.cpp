// SPDX-License-Identifier: MIT
#include "sound/arrival.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

using room::Channel;

glm::dvec3 place_of(const room::Loudspeaker& l) {
    return {l.across_m, l.up_m, l.back_m};
}

bool plays_with_screen(Channel channel) {
    return channel != Channel::surround;
}

void earlier(std::optional<double>& first, double arrival_s) {
    first = std::min(first.value_or(arrival_s), arrival_s);
}

void hear(Channel channel, double arrival_s, ChannelArrivals& out) {
    switch (channel) {
        case Channel::left:
            return earlier(out.left_s, arrival_s);
        case Channel::centre:
            return earlier(out.centre_s, arrival_s);
        case Channel::right:
            return earlier(out.right_s, arrival_s);
        case Channel::surround:
            return earlier(out.surround_s, arrival_s);
        case Channel::sub_bass:  // has no bearing to be heard by
            return;
    }
}

ChannelArrivals arrivals_at(const ArrivalInput& in, const glm::dvec3& ear) {
    ChannelArrivals out;
    for (const room::Loudspeaker& l : in.loudspeakers)
        hear(l.channel, glm::length(ear - place_of(l)) / in.sound_speed_m_s + l.delay_s, out);
    return out;
}

double turned(double angle_rad) {
    return std::remainder(angle_rad, 2.0 * base::kPi);
}

}  // namespace

std::optional<double> ChannelArrivals::first_screen_s() const {
    std::optional<double> first;
    for (const auto& channel : {left_s, centre_s, right_s})
        if (channel) first = std::min(first.value_or(*channel), *channel);
    return first;
}

std::optional<double> ChannelArrivals::last_screen_s() const {
    std::optional<double> last;
    for (const auto& channel : {left_s, centre_s, right_s})
        if (channel) last = std::max(last.value_or(*channel), *channel);
    return last;
}

std::optional<double> ChannelArrivals::spread_s() const {
    const int channels = left_s.has_value() + centre_s.has_value() + right_s.has_value();
    if (channels < 2) return std::nullopt;
    return *last_screen_s() - *first_screen_s();
}

std::optional<double> ChannelArrivals::outer_lead_s() const {
    if (!left_s || !centre_s || !right_s) return std::nullopt;
    return *centre_s - std::min(*left_s, *right_s);
}

std::optional<double> ChannelArrivals::screen_lead_s() const {
    const auto screen = first_screen_s();
    if (!screen || !surround_s) return std::nullopt;
    return *surround_s - *screen;
}

Arrival study_arrival(const ArrivalInput& in) {
    Arrival out;
    out.seats.reserve(in.ears.size());
    for (const glm::dvec3& ear : in.ears)
        out.seats.push_back(arrivals_at(in, ear));
    out.suggested_delay_s = suggested_delays(in).value_or(std::vector<double>{});
    return out;
}

std::optional<std::vector<double>> suggested_delays(const ArrivalInput& in) {
    if (!in.reference_seat) return std::nullopt;
    const glm::dvec3& ear = in.ears.at(static_cast<std::size_t>(*in.reference_seat));
    double farthest_m = -1.0;
    for (const room::Loudspeaker& l : in.loudspeakers)
        if (plays_with_screen(l.channel))
            farthest_m = std::max(farthest_m, glm::length(ear - place_of(l)));
    if (farthest_m < 0.0) return std::nullopt;
    std::vector<double> out;
    for (const room::Loudspeaker& l : in.loudspeakers) {
        const double margin_s = plays_with_screen(l.channel) ? 0.0 : kSurroundMargin_s;
        const double behind_m = farthest_m - glm::length(ear - place_of(l));
        out.push_back(std::max(0.0, behind_m / in.sound_speed_m_s + margin_s));
    }
    return out;
}

ImageOffset image_offset(const glm::dvec3& ear,
                         const glm::dvec3& source,
                         const glm::dvec3& picture) {
    const auto bearing = [&](const glm::dvec3& p) { return std::atan2(p.x - ear.x, ear.z - p.z); };
    const auto elevation = [&](const glm::dvec3& p) {
        return std::atan2(p.y - ear.y, std::hypot(p.x - ear.x, p.z - ear.z));
    };
    return {turned(bearing(source) - bearing(picture)), elevation(source) - elevation(picture)};
}

}  // namespace rakeline::sound
