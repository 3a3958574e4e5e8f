// SPDX-License-Identifier: MIT
#include "desk/lens_choice.hpp"

#include "desk/layout_edits.hpp"
#include "picture/lens_words.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

/// The projector's use of the format, or null.
template <class Layout>
auto* find_use(Layout& layout, int projector, int format) {
    auto& uses = layout.projectors.at(static_cast<std::size_t>(projector)).formats;
    const std::string& name = layout.formats.at(static_cast<std::size_t>(format)).name;
    const auto found =
        std::find_if(uses.begin(), uses.end(), [&](const auto& use) { return use.format == name; });
    return found == uses.end() ? nullptr : &*found;
}

/// Name under which the layout has this very lens, adding it where it has not.
std::string listed_name(room::Layout& layout, room::Lens lens) {
    const auto same = std::find(layout.lenses.begin(), layout.lenses.end(), lens);
    if (same != layout.lenses.end()) return lens.name;
    std::vector<std::string> taken;
    for (const room::Lens& has : layout.lenses)
        taken.push_back(has.name);
    if (std::find(taken.begin(), taken.end(), lens.name) != taken.end())
        lens.name = free_name(lens.name, taken);
    layout.lenses.push_back(lens);
    return lens.name;
}

}  // namespace

const LensPickCache& lens_pick(const PanelInput& in, Workspace& w) {
    LensPickCache& cache = w.lens_pick;
    const LensPickCache::Key key{in.study_serial, w.projector, w.format, w.series_serial,
                                 in.units()};
    if (cache.key == key) return cache;
    cache = {};
    cache.key = key;
    const room::Layout& layout = in.study->layout();
    if (layout.projectors.empty() || layout.formats.empty()) return cache;
    cache.catalogue = study::lens_catalogue(layout, w.series);
    cache.pick = study::pick_lens(*in.study, cache.catalogue, w.projector, w.format);
    if (!cache.pick) return cache;
    cache.reason = picture::lens_reason(*cache.pick, study::lenses_of(cache.catalogue), in.units());
    cache.needed = picture::lens_needed(*cache.pick, in.units());
    for (const picture::LensChoice& choice : cache.pick->choices)
        cache.faults.push_back(picture::lens_faults(choice, in.units()));
    return cache;
}

std::optional<room::Layout> with_lens(const room::Layout& layout,
                                      int projector,
                                      int format,
                                      const room::Lens& lens,
                                      double focal_length_m) {
    room::Layout out = layout;
    room::FormatUse* use = find_use(out, projector, format);
    if (!use) return std::nullopt;
    use->lens = listed_name(out, lens);
    use->focal_length_m.reset();
    if (lens.kind == room::LensKind::zoom) use->focal_length_m = focal_length_m;
    return out;
}

std::string fitted_lens(const room::Layout& layout, int projector, int format) {
    const room::FormatUse* use = find_use(layout, projector, format);
    return use ? use->lens : std::string{};
}

}  // namespace rakeline::desk
