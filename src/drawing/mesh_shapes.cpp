// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

glm::dvec3 moved(const glm::dmat4& m, const glm::dvec3& p) {
    return glm::dvec3(m * glm::dvec4(p, 1.0));
}
glm::dvec3 turned(const glm::dmat4& m, const glm::dvec3& v) {
    return glm::normalize(glm::dvec3(m * glm::dvec4(v, 0.0)));
}

/// Rim of a plate at one height: the outline drawn in by `inset`, with the normals between the
/// outward direction and +-z.
struct Rim {
    double inset_m = 0.0;
    double z_m = 0.0;
    double face = 0.0;  ///< -1: normals along -z, 0: outward, +1: along +z
};

unsigned add_rim(Part& part, const Plate& plate, const Rim& rim, const glm::dmat4& place) {
    const auto first = static_cast<unsigned>(part.vertices.size());
    glm::dvec2 middle(0.0);
    for (const glm::dvec2& p : plate.outline)
        middle += p;
    middle /= static_cast<double>(plate.outline.size());
    for (const glm::dvec2& p : plate.outline) {
        const glm::dvec2 outward = glm::normalize(p - middle);
        const glm::dvec2 at = p - rim.inset_m * outward;
        const glm::dvec3 normal =
            (1.0 - std::abs(rim.face)) * glm::dvec3(outward, 0.0) + glm::dvec3(0.0, 0.0, rim.face);
        part.vertices.push_back({moved(place, glm::dvec3(at, rim.z_m)), turned(place, normal),
                                 glm::dvec2(plate.paint, 0.0)});
    }
    return first;
}

void join_rims(Part& part, unsigned lower, unsigned upper, unsigned count) {
    for (unsigned i = 0; i < count; ++i) {
        const unsigned j = (i + 1) % count;
        for (const unsigned index :
             {lower + i, lower + j, upper + j, lower + i, upper + j, upper + i}) {
            part.indices.push_back(index);
        }
    }
}

void close_rim(Part& part, unsigned first, unsigned count, bool upward) {
    for (unsigned i = 1; i + 1 < count; ++i) {
        part.indices.push_back(first);
        part.indices.push_back(first + (upward ? i : i + 1));
        part.indices.push_back(first + (upward ? i + 1 : i));
    }
}

}  // namespace

void add_quad(Part& part, const std::array<glm::dvec3, 4>& c, const std::array<glm::dvec2, 4>& uv) {
    // The diagonals' product is the normal of a plane quadrilateral, and the mean one of a warped.
    const glm::dvec3 product = glm::cross(c[2] - c[0], c[3] - c[1]);
    const double length = glm::length(product);
    if (length < 1e-9) return;
    const auto first = static_cast<unsigned>(part.vertices.size());
    for (std::size_t i = 0; i < 4; ++i) {
        part.vertices.push_back({c[i], product / length, uv[i]});
    }
    // A floor that runs out to a point has two corners in one place.
    for (const std::array<unsigned, 3>& t : {std::array{0u, 1u, 2u}, std::array{0u, 2u, 3u}}) {
        const glm::dvec3 turn = glm::cross(c[t[1]] - c[t[0]], c[t[2]] - c[t[0]]);
        if (glm::dot(turn, product) <= 1e-12 * length) continue;
        for (const unsigned i : t)
            part.indices.push_back(first + i);
    }
}

void add_box(Part& part, const Box& box, const glm::dmat4& place) {
    const glm::dvec3 a = box.low;
    const glm::dvec3 b = box.high;
    const std::array<glm::dvec2, 4> uv = {glm::dvec2(box.paint, 0.0), glm::dvec2(box.paint, 0.0),
                                          glm::dvec2(box.paint, 0.0), glm::dvec2(box.paint, 0.0)};
    const auto face = [&](glm::dvec3 p, glm::dvec3 q, glm::dvec3 r, glm::dvec3 s) {
        add_quad(part, {moved(place, p), moved(place, q), moved(place, r), moved(place, s)}, uv);
    };
    face({a.x, a.y, b.z}, {b.x, a.y, b.z}, {b.x, b.y, b.z}, {a.x, b.y, b.z});
    face({b.x, a.y, a.z}, {a.x, a.y, a.z}, {a.x, b.y, a.z}, {b.x, b.y, a.z});
    face({b.x, a.y, b.z}, {b.x, a.y, a.z}, {b.x, b.y, a.z}, {b.x, b.y, b.z});
    face({a.x, a.y, a.z}, {a.x, a.y, b.z}, {a.x, b.y, b.z}, {a.x, b.y, a.z});
    if (!box.ends) return;
    face({a.x, b.y, b.z}, {b.x, b.y, b.z}, {b.x, b.y, a.z}, {a.x, b.y, a.z});
    face({a.x, a.y, a.z}, {b.x, a.y, a.z}, {b.x, a.y, b.z}, {a.x, a.y, b.z});
}

void add_ghost(std::vector<Edge>& edges,
               const Box& box,
               const glm::dmat4& place,
               const glm::dvec3& wall) {
    const auto corner = [&](int i) {
        return moved(place, {(i & 1) ? box.high.x : box.low.x, (i & 2) ? box.high.y : box.low.y,
                             (i & 4) ? box.high.z : box.low.z});
    };
    for (int i = 0; i < 8; ++i) {
        for (const int axis : {1, 2, 4}) {
            if (i & axis) continue;
            // Seen where the wall shows the eye its back.
            edges.push_back({EdgeKind::ghost, corner(i), corner(i | axis), {-wall, -wall}});
        }
    }
}

void add_plate(Part& part, const Plate& plate, const glm::dmat4& place) {
    const auto n = static_cast<unsigned>(plate.outline.size());
    const double t = plate.thickness_m;
    const double b = plate.bevel_m;
    const unsigned low = add_rim(part, plate, {0.0, plate.back_face ? b : 0.0, 0.0}, place);
    const unsigned high = add_rim(part, plate, {0.0, t - b, 0.0}, place);
    const unsigned top = add_rim(part, plate, {b, t, 1.0}, place);
    join_rims(part, low, high, n);
    join_rims(part, high, top, n);
    close_rim(part, top, n, true);
    if (!plate.back_face) return;
    const unsigned bottom = add_rim(part, plate, {b, 0.0, -1.0}, place);
    join_rims(part, bottom, low, n);
    close_rim(part, bottom, n, false);
}

std::vector<glm::dvec2> outline_of(const RoundedRectangle& s) {
    const double r = s.radius_m;
    const double x = 0.5 * s.width_m;
    std::vector<glm::dvec2> out;
    const auto corner = [&](glm::dvec2 centre, double from_rad) {
        for (int i = 0; i <= s.steps; ++i) {
            const double angle = from_rad + 0.5 * base::kPi * i / s.steps;
            out.push_back(centre + r * glm::dvec2(std::cos(angle), std::sin(angle)));
        }
    };
    if (s.top_only) {
        out.push_back({-x, 0.0});
        out.push_back({x, 0.0});
    } else {
        corner({-x + r, r}, base::kPi);
        corner({x - r, r}, 1.5 * base::kPi);
    }
    corner({x - r, s.height_m - r}, 0.0);
    corner({-x + r, s.height_m - r}, 0.5 * base::kPi);
    return out;
}

void add_ellipsoid(Part& part, const Ellipsoid& s) {
    const auto first = static_cast<unsigned>(part.vertices.size());
    for (int j = 0; j <= s.along; ++j) {
        const double polar = base::kPi * j / s.along;
        for (int i = 0; i <= s.around; ++i) {
            const double turn = 2.0 * base::kPi * i / s.around;
            const glm::dvec3 unit(std::sin(polar) * std::sin(turn), std::cos(polar),
                                  std::sin(polar) * std::cos(turn));
            part.vertices.push_back(
                {s.centre + s.half * unit, glm::normalize(unit / s.half), glm::dvec2(0.0)});
        }
    }
    const auto stride = static_cast<unsigned>(s.around + 1);
    for (unsigned j = 0; j < static_cast<unsigned>(s.along); ++j) {
        for (unsigned i = 0; i < static_cast<unsigned>(s.around); ++i) {
            const unsigned a = first + j * stride + i;
            const unsigned b = a + stride;
            if (j > 0) part.indices.insert(part.indices.end(), {a, b, a + 1});
            if (j + 1 < static_cast<unsigned>(s.along)) {
                part.indices.insert(part.indices.end(), {a + 1, b, b + 1});
            }
        }
    }
}

glm::dmat4 frame_at(const glm::dvec3& origin,
                    const glm::dvec3& right,
                    const glm::dvec3& up,
                    const glm::dvec3& back) {
    return {glm::dvec4(right, 0.0), glm::dvec4(up, 0.0), glm::dvec4(back, 0.0),
            glm::dvec4(origin, 1.0)};
}

glm::dmat4 leaning_at(const glm::dvec3& origin, double angle_rad) {
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    return frame_at(origin, {1.0, 0.0, 0.0}, {0.0, c, s}, {0.0, -s, c});
}

}  // namespace rakeline::drawing
