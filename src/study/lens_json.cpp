// SPDX-License-Identifier: MIT
#include "study/lens_json.hpp"

#include "picture/lens_words.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;
using picture::LensChoice;

void put(Json& out, const char* key, const std::optional<double>& value) {
    if (value) out[key] = *value;
}

Json picture_json(const picture::LensPicture& p) {
    Json out;
    out["enlargement"] = p.enlargement;
    out["deciding_edge"] = picture::edge_name(p.decides);
    if (p.overfill) {
        out["overfill_m"] = {{"left", p.overfill->left_m},
                             {"right", p.overfill->right_m},
                             {"top", p.overfill->top_m},
                             {"bottom", p.overfill->bottom_m}};
    }
    out["crop"] = p.crop;
    out["light_lost"] = p.crop;
    out["uncovered"] = p.uncovered;
    put(out, "port_margin_m", p.port_margin_m);
    return out;
}

Json choice_json(const LensChoice& c, const ListedLens& listed) {
    Json out;
    out["name"] = listed.lens.name;
    out["list"] = listed.list;
    out["kind"] = listed.lens.kind == room::LensKind::prime ? "prime" : "zoom";
    out["focal_length_m"] = c.focal_length_m;
    out["covers"] = c.covers();
    out["fits"] = c.fits();
    out["faults"] = picture::lens_faults(c, base::UnitSystem::metric);
    put(out, "picture_width_m", c.picture_width_m);
    put(out, "throw_ratio_short", c.reach.throw_ratio_short);
    put(out, "throw_ratio_long", c.reach.throw_ratio_long);
    out["shift_across_short"] = c.reach.shift_across_short;
    out["shift_up_short"] = c.reach.shift_up_short;
    out["shift_across_max"] = listed.lens.shift_across_max;
    out["shift_up_max"] = listed.lens.shift_up_max;
    out["field_lost"] = c.reach.field_lost;
    out["image_circle_spare_m"] = c.reach.image_circle_spare_m;
    if (c.picture) out["picture"] = picture_json(*c.picture);
    return out;
}

Json pick_json(const room::Layout& layout,
               const picture::LensPick& pick,
               std::span<const ListedLens> catalogue) {
    Json out;
    out["projector"] = layout.projectors.at(static_cast<std::size_t>(pick.projector)).name;
    out["format"] = layout.formats.at(static_cast<std::size_t>(pick.format)).name;
    if (!pick.wish) {
        out["why"] = pick.why_none;
        out["mend"] = pick.mend_none;
        return out;
    }
    out["throw_m"] = pick.wish->demand.throw_m;
    out["focal_length_m"] = pick.wish->focal_length_m;
    put(out, "focal_length_covering_m", pick.wish->covering_focal_length_m);
    out["image_circle_m"] = pick.wish->demand.image_circle_m;
    out["shift_across"] = pick.wish->demand.shift_across;
    out["shift_up"] = pick.wish->demand.shift_up;
    out["reason"] = picture::lens_reason(pick, lenses_of(catalogue), base::UnitSystem::metric);
    out["needed"] = picture::lens_needed(pick, base::UnitSystem::metric);
    out["lenses"] = Json::array();
    for (const LensChoice& choice : pick.choices) {
        out["lenses"].push_back(
            choice_json(choice, catalogue[static_cast<std::size_t>(choice.lens)]));
    }
    return out;
}

}  // namespace

std::string lens_json(const room::Layout& layout,
                      std::span<const picture::LensPick> picks,
                      std::span<const ListedLens> catalogue) {
    Json out;
    out["room"] = layout.name;
    out["picks"] = Json::array();
    for (const picture::LensPick& pick : picks)
        out["picks"].push_back(pick_json(layout, pick, catalogue));
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
