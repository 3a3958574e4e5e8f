// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"

namespace rakeline::study {

const sight::FormatSight& sight_of(const Cell& c) {
    return c.study.sight.formats.at(static_cast<std::size_t>(c.format));
}

const sight::ViewingAngles& angles_of(const Cell& c) {
    return sight_of(c).seats.at(static_cast<std::size_t>(c.index));
}

void record_eye(const Cell& c, Working& w) {
    if (!w.recording()) return;
    const glm::dvec3 eye = c.study.seats.seats.at(static_cast<std::size_t>(c.index)).eye;
    w.input("x", "eye across", eye.x, base::Unit::metre);
    w.input("y", "eye up", eye.y, base::Unit::metre);
    w.input("z", "eye back", eye.z, base::Unit::metre);
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    w.input("W", "picture width, chord", opening.width_m, base::Unit::metre);
    w.input("H", "picture height", opening.height_m, base::Unit::metre);
    const glm::dvec3 centre = geometry::point_at(c.study.picture.surface, opening.uv.centre());
    w.input("y_c", "picture centre up", centre.y, base::Unit::metre);
    w.input("z_c", "picture centre back", centre.z, base::Unit::metre);
}

void record_clearance(const glm::dvec3& rear,
                      const glm::dvec3& front,
                      const glm::dvec3& focus,
                      const std::string& what,
                      Working& w) {
    if (!w.recording()) return;
    const auto terms = sight::clearance_terms(rear, front, focus);
    if (!terms) return;
    const std::string d = "front " + what + " to the point of focus, level, along the sight line";
    const std::string r = "front " + what + " over the point of focus";
    const std::string t = "tread from rear eye to front " + what + ", along the sight line";
    const std::string n = "rear eye over front " + what;
    w.input("D", d.c_str(), terms->distance_m, base::Unit::metre);
    w.input("R", r.c_str(), terms->front_eye_height_m, base::Unit::metre);
    w.input("T", t.c_str(), terms->tread_m, base::Unit::metre);
    w.input("N", n.c_str(), terms->riser_m, base::Unit::metre);
}

}  // namespace rakeline::study
