// SPDX-License-Identifier: MIT
#include "desk/loudspeaker_choice.hpp"

namespace rakeline::desk {
namespace {

bool has_chosen(const PanelInput& in, const Workspace& w) {
    return in.study && w.loudspeaker >= 0 &&
           static_cast<std::size_t>(w.loudspeaker) < in.study->layout().loudspeakers.size();
}

}  // namespace

const AimCache& aim_choice(const PanelInput& in, Workspace& w) {
    AimCache& cache = w.aim;
    if (cache.study == in.study_serial && cache.loudspeaker == w.loudspeaker) return cache;
    cache = {in.study_serial, w.loudspeaker, {}};
    if (has_chosen(in, w)) cache.proposal = study::aim_advice(*in.study, w.loudspeaker, false);
    return cache;
}

std::optional<Edit> aim_edit(const PanelInput& in, Workspace& w) {
    if (!in.current || !has_chosen(in, w)) return std::nullopt;
    const auto& proposal = aim_choice(in, w).proposal;
    if (!proposal || proposal->after == proposal->before) return std::nullopt;
    return Edit{
        "Aim at the seats", study::with_aim(in.brief.layout, w.loudspeaker, proposal->after), {}};
}

std::string aim_hint(const PanelInput& in, Workspace& w) {
    if (!in.current || !in.study) return "The study follows the layout: in a moment";
    if (!has_chosen(in, w)) return "There is no loudspeaker to aim";
    const auto& proposal = aim_choice(in, w).proposal;
    if (!proposal) return "Only loudspeakers of the screen are aimed, in a room with seats";
    return study::aim_words(in.study->layout(), w.loudspeaker, *proposal, in.units());
}

std::vector<ListedLoudspeaker> listed_loudspeakers(const Workspace& w) {
    std::vector<ListedLoudspeaker> out;
    for (const room::Series& series : w.series)
        for (const room::Loudspeaker& loudspeaker : series.loudspeakers)
            out.push_back({&loudspeaker, series.name});
    return out;
}

room::Layout with_series_loudspeaker(const room::Layout& layout,
                                     int which,
                                     const room::Loudspeaker& of_series) {
    room::Layout out = layout;
    room::Loudspeaker& l = out.loudspeakers.at(static_cast<std::size_t>(which));
    const room::Loudspeaker before = l;
    l = of_series;
    l.name = before.name;
    l.channel = before.channel;
    l.across_m = before.across_m;
    l.up_m = before.up_m;
    l.back_m = before.back_m;
    l.yaw_rad = before.yaw_rad;
    l.pitch_rad = before.pitch_rad;
    l.behind_screen = before.behind_screen;
    l.delay_s = before.delay_s;
    return out;
}

}  // namespace rakeline::desk
