// SPDX-License-Identifier: MIT
#include "picture/beam.hpp"

#include "picture/beam_solid.hpp"

namespace rakeline::picture {
namespace {

void take_least(const BeamSolid& beam,
                const SpacePolygon& floor,
                std::optional<int> block,
                std::optional<BeamClearance>& least) {
    for (const BeamFace& face : beam.lower) {
        SpacePolygon under = plan_overlap(face, floor);
        // What stands above the whole beam has it below, not above.
        for (const BeamFace& top : beam.upper)
            keep_inside(under, top.inside);
        for (const glm::dvec3& p : under) {
            const double height = face.rise(p);
            if (!least || height < least->height_m) least = BeamClearance{height, p, block};
        }
    }
}

}  // namespace

std::optional<BeamClearance> beam_clearance(const BeamInput& in,
                                            std::span<const room::Platform> platforms) {
    const auto beam = beam_solid(in.map, in.gate_size_m);
    if (!beam) return std::nullopt;
    const HalfSpace hall{{0.0, 0.0, -1.0}, in.booth_wall_back_m};
    std::optional<BeamClearance> least;
    for (const room::Platform& platform : platforms) {
        const auto& c = platform.corners;
        for (SpacePolygon floor :
             {SpacePolygon{c[0], c[1], c[2]}, SpacePolygon{c[0], c[2], c[3]}}) {
            keep_inside(floor, hall);
            take_least(*beam, floor, platform.block, least);
        }
    }
    return least;
}

std::optional<glm::dvec3> port_point(const Pose& pose, double throw_m, double booth_wall_back_m) {
    if (pose.axis.z == 0.0) return std::nullopt;
    const double t = (booth_wall_back_m - pose.lens.z) / pose.axis.z;
    if (t < 0.0 || t > throw_m) return std::nullopt;
    return pose.lens + t * pose.axis;
}

}  // namespace rakeline::picture
