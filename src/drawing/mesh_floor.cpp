// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"

#include <algorithm>
#include <cmath>

/// Floors as solids: every platform stands on the hall's lowest floor, those of a balcony on a slab
/// of their own.
namespace rakeline::drawing {
namespace {

constexpr double kLeastSlab_m = 0.30;    // common practice, no source: looks like a balcony
constexpr double kNosing_m = 0.045;      // width of the light strip on a step's edge
constexpr double kNosingLift_m = 0.004;  // over the tread, so that the two don't fight for depth
constexpr double kSameEdge_m = 1e-4;     // ends of two edges that are one

const glm::dvec3 kUp(0.0, 1.0, 0.0);

struct FloorEdge {
    glm::dvec3 from{0.0};
    glm::dvec3 to{0.0};
};

bool same_place(const glm::dvec3& a, const glm::dvec3& b) {
    return std::abs(a.x - b.x) + std::abs(a.y - b.y) + std::abs(a.z - b.z) < kSameEdge_m;
}

FloorEdge edge_of(const room::Platform& platform, std::size_t side) {
    return {platform.corners[side], platform.corners[(side + 1) % 4]};
}

/// The edges of all platforms by where they begin, so that one that goes on is found among few.
class FloorEdges {
public:
    explicit FloorEdges(const std::vector<room::Platform>& platforms) {
        for (std::size_t i = 0; i < platforms.size(); ++i) {
            for (std::size_t side = 0; side < 4; ++side) {
                const FloorEdge edge = edge_of(platforms[i], side);
                all_.push_back({key(edge.from), i, edge});
            }
        }
        std::ranges::sort(all_, {}, &Placed::key);
    }

    /// Whether another platform goes on from this edge at the same height.
    bool goes_on(std::size_t self, const FloorEdge& e) const {
        const double wanted = key(e.to);
        auto at = std::ranges::lower_bound(all_, wanted - kSameEdge_m, {}, &Placed::key);
        for (; at != all_.end() && at->key <= wanted + kSameEdge_m; ++at) {
            if (at->platform == self) continue;
            if (same_place(at->edge.from, e.to) && same_place(at->edge.to, e.from)) return true;
        }
        return false;
    }

private:
    struct Placed {
        double key = 0.0;
        std::size_t platform = 0;
        FloorEdge edge;
    };
    /// Places that are the same by same_place differ by less than kSameEdge_m in it.
    static double key(const glm::dvec3& p) { return p.x + 0.75 * p.y + 0.57 * p.z; }

    std::vector<Placed> all_;
};

bool in_raised_block(const study::Study& study, const room::Platform& platform) {
    if (!platform.row) return false;
    const room::Row& row = study.seats.rows[static_cast<std::size_t>(*platform.row)];
    return study.layout().seating[static_cast<std::size_t>(row.block)].raised;
}

/// The platforms of raised blocks stand last in the plan, each block's treads before the rest.
std::size_t first_raised(const study::Study& study) {
    const auto& platforms = study.seats.platforms;
    const auto found = std::ranges::find_if(
        platforms, [&](const room::Platform& p) { return in_raised_block(study, p); });
    return static_cast<std::size_t>(found - platforms.begin());
}

/// Thick enough to close the risers between the rows of all raised blocks.
double slab_thickness(const study::Study& study) {
    double thickness = kLeastSlab_m;
    for (const room::Row& row : study.seats.rows) {
        if (!study.layout().seating[static_cast<std::size_t>(row.block)].raised) continue;
        if (!row.row_in_front) continue;
        const room::Row& front = study.seats.rows[static_cast<std::size_t>(*row.row_in_front)];
        thickness = std::max(thickness, row.centre_floor.y - front.centre_floor.y + 0.1);
    }
    return thickness;
}

double highest_front_wall(const study::Study& study) {
    double wall = 0.0;
    for (const room::SeatBlock& block : study.layout().seating) {
        if (block.raised) wall = std::max(wall, block.front_wall_m);
    }
    return wall;
}

void add_skirt(Part& part, const FloorEdge& e, double from_bottom_m, double to_bottom_m) {
    const glm::dvec3 a(e.from.x, std::min(from_bottom_m, e.from.y), e.from.z);
    const glm::dvec3 b(e.to.x, std::min(to_bottom_m, e.to.y), e.to.z);
    add_quad(part, {e.from, a, b, e.to});
}

void add_nosing(Part& part, const FloorEdge& e, const room::Platform& platform) {
    const glm::dvec3 along = e.to - e.from;
    glm::dvec3 inward = glm::cross(kUp, along);
    if (glm::length(inward) < kNosing_m) return;
    inward = kNosing_m * glm::normalize(inward);
    const glm::dvec3 lift(0.0, kNosingLift_m, 0.0);
    // On a slope the strip lies in the platform's plane.
    const glm::dvec3 normal = glm::cross(platform.corners[2] - platform.corners[0],
                                         platform.corners[3] - platform.corners[1]);
    if (normal.y > 0.0) inward.y = -(normal.x * inward.x + normal.z * inward.z) / normal.y;
    add_quad(part, {e.from + lift, e.to + lift, e.to + inward + lift, e.from + inward + lift});
}

struct Solid {
    const study::Study& study;
    const FloorEdges& edges;
    std::size_t index = 0;
    std::optional<double> slab_m;  ///< of a raised platform; others reach the base
    double base_m = 0.0;
};

/// Corners 3 -> 0 are a platform's front edge, the step that people meet walking back.
void add_platform(const Solid& solid, Part& floor, Part& nosing, std::vector<Edge>& edges) {
    const auto& platforms = solid.study.seats.platforms;
    const room::Platform& platform = platforms[solid.index];
    const auto& c = platform.corners;
    add_quad(floor, c);
    const auto bottom = [&](const glm::dvec3& p) {
        return solid.slab_m ? p.y - *solid.slab_m : solid.base_m;
    };
    for (std::size_t side = 0; side < 4; ++side) {
        const FloorEdge e = edge_of(platform, side);
        if (solid.edges.goes_on(solid.index, e)) continue;
        add_skirt(floor, e, bottom(e.from), bottom(e.to));
        const bool step = side == 3 && platform.kind != room::PlatformKind::front &&
                          glm::length(e.to - e.from) > kSameEdge_m;
        if (!step || e.from.y <= solid.base_m + kSameEdge_m) continue;
        if (platform.kind != room::PlatformKind::balcony_front) add_nosing(nosing, e, platform);
        const glm::dvec3 lift(0.0, kNosingLift_m, 0.0);
        edges.push_back({EdgeKind::step, e.from + lift, e.to + lift, {}});
    }
    if (!solid.slab_m) return;
    const auto under = [&](std::size_t i) { return glm::dvec3(c[i].x, bottom(c[i]), c[i].z); };
    add_quad(floor, {under(3), under(2), under(1), under(0)});
}

/// The bare ground under everything, a little lower than the lowest floor.
void add_ground(const study::Study& study, double base_m, Part& floor) {
    const room::Hall& hall = study.layout().hall;
    const double front = room::half_width_at(hall, 0.0);
    const double back = room::half_width_at(hall, hall.length_m);
    const double y = base_m - kNosingLift_m;
    add_quad(floor, {glm::dvec3(-front, y, 0.0), glm::dvec3(-back, y, hall.length_m),
                     glm::dvec3(back, y, hall.length_m), glm::dvec3(front, y, 0.0)});
}

}  // namespace

double lowest_floor_m(const study::Study& study) {
    double low = 0.0;
    for (const room::Platform& platform : study.seats.platforms) {
        for (const glm::dvec3& corner : platform.corners)
            low = std::min(low, corner.y);
    }
    return low;
}

void add_floor(const study::Study& study, RoomMesh& mesh) {
    Part ground{.material = Material::floor, .shows = {Shows::Kind::hall, 0}};
    Part nosing{.material = Material::step_edge, .shows = {Shows::Kind::hall, 0}};
    const double base = lowest_floor_m(study);
    add_ground(study, base, ground);
    mesh.parts.push_back(std::move(ground));

    const std::size_t raised_from = first_raised(study);
    const double slab = slab_thickness(study);
    const FloorEdges all_edges(study.seats.platforms);
    for (std::size_t i = 0; i < study.seats.platforms.size(); ++i) {
        const room::Platform& platform = study.seats.platforms[i];
        Part floor{.material = Material::floor, .shows = {Shows::Kind::hall, 0}};
        if (platform.row) floor.shows = {Shows::Kind::row, *platform.row};
        Solid solid{.study = study, .edges = all_edges, .index = i, .slab_m = {}, .base_m = base};
        if (i >= raised_from) solid.slab_m = slab;
        if (i >= raised_from && platform.kind == room::PlatformKind::balcony_front) {
            solid.slab_m = slab + highest_front_wall(study);
        }
        add_platform(solid, floor, nosing, mesh.edges);
        mesh.parts.push_back(std::move(floor));
    }
    if (!nosing.indices.empty()) mesh.parts.push_back(std::move(nosing));
}

}  // namespace rakeline::drawing
