// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"

#include <algorithm>
#include <cmath>

/// The booth wall with its ports, and the projectors behind it.
namespace rakeline::drawing {
namespace {

constexpr double kRevealDepth_m = 0.22;  // common practice, no source: a brick's length

const glm::dvec3 kBoothWallInward(0.0, 0.0, -1.0);

struct PortHole {
    double left = 0.0, right = 0.0, low = 0.0, high = 0.0;
    bool contains(double x, double y) const { return x > left && x < right && y > low && y < high; }
};

std::vector<PortHole> port_holes(const room::Layout& layout, double base_m) {
    const double half = room::half_width_at(layout.hall, layout.hall.length_m);
    std::vector<PortHole> holes;
    for (const room::Projector& projector : layout.projectors) {
        const room::Port& p = projector.port;
        const PortHole hole{std::clamp(p.across_m - 0.5 * p.width_m, -half, half),
                            std::clamp(p.across_m + 0.5 * p.width_m, -half, half),
                            std::clamp(p.up_m - 0.5 * p.height_m, base_m, layout.hall.height_m),
                            std::clamp(p.up_m + 0.5 * p.height_m, base_m, layout.hall.height_m)};
        if (hole.left < hole.right && hole.low < hole.high) holes.push_back(hole);
    }
    return holes;
}

std::vector<double> cuts_between(double from, double to, std::vector<double> inner) {
    inner.push_back(from);
    inner.push_back(to);
    std::ranges::sort(inner);
    inner.erase(std::unique(inner.begin(), inner.end()), inner.end());
    return inner;
}

/// The wall is cut into cells at every port's edges, so that ports may overlap; a cell inside a
/// port is left out.
void add_wall(const room::Hall& hall,
              const std::vector<PortHole>& holes,
              double base_m,
              RoomMesh& mesh) {
    Part wall{.material = Material::booth_wall, .shows = {Shows::Kind::hall, 0}};
    std::vector<double> xs;
    std::vector<double> ys;
    for (const PortHole& hole : holes) {
        xs.insert(xs.end(), {hole.left, hole.right});
        ys.insert(ys.end(), {hole.low, hole.high});
    }
    const double half = room::half_width_at(hall, hall.length_m);
    xs = cuts_between(-half, half, xs);
    ys = cuts_between(base_m, hall.height_m, ys);
    const double z = hall.length_m;
    for (std::size_t i = 1; i < xs.size(); ++i) {
        for (std::size_t j = 1; j < ys.size(); ++j) {
            const double x = 0.5 * (xs[i - 1] + xs[i]);
            const double y = 0.5 * (ys[j - 1] + ys[j]);
            const auto holds = [&](const PortHole& hole) { return hole.contains(x, y); };
            if (std::ranges::any_of(holes, holds)) continue;
            add_quad(wall, {glm::dvec3(xs[i], ys[j - 1], z), glm::dvec3(xs[i - 1], ys[j - 1], z),
                            glm::dvec3(xs[i - 1], ys[j], z), glm::dvec3(xs[i], ys[j], z)});
        }
    }
    mesh.parts.push_back(std::move(wall));
}

/// The sides of the hole through the wall, seen from inside it.
void add_reveal(const PortHole& h, double z, RoomMesh& mesh) {
    Part reveal{.material = Material::port, .shows = {Shows::Kind::hall, 0}};
    reveal.wall = kBoothWallInward;
    const double back = z + kRevealDepth_m;
    const glm::dvec2 loop[] = {
        {h.left, h.low}, {h.right, h.low}, {h.right, h.high}, {h.left, h.high}};
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 p = loop[i];
        const glm::dvec2 q = loop[(i + 1) % 4];
        add_quad(reveal,
                 {glm::dvec3(p, z), glm::dvec3(p, back), glm::dvec3(q, back), glm::dvec3(q, z)});
        mesh.edges.push_back({EdgeKind::port, glm::dvec3(p, z), glm::dvec3(q, z), {}});
    }
    mesh.parts.push_back(std::move(reveal));
}

/// Axes of the body: as the lens looks in the first picture that the projector gives, else straight
/// at the screen wall.
glm::dmat4 body_frame(const study::Study& study, int projector) {
    const room::Projector& p = study.layout().projectors[static_cast<std::size_t>(projector)];
    const glm::dvec3 lens(p.across_m, p.up_m, p.back_m);
    for (const picture::ProjectedPicture& picture : study.picture.pictures) {
        if (picture.projector != projector) continue;
        const picture::Pose& pose = picture.map.pose();
        return frame_at(pose.lens, pose.right, pose.up, -pose.axis);
    }
    return frame_at(lens, {1, 0, 0}, {0, 1, 0}, {0, 0, 1});
}

/// A body, and a lens barrel that ends at the principal point.
void add_projector(const study::Study& study, int index, RoomMesh& mesh) {
    Part part{.material = Material::projector, .shows = {Shows::Kind::projector, index}};
    part.wall = kBoothWallInward;
    const glm::dmat4 frame = body_frame(study, index);
    const Box body{.low = {-0.25, -0.23, 0.30}, .high = {0.25, 0.23, 1.15}};
    add_box(part, body, frame);
    add_box(part, {.low = {-0.07, -0.07, 0.0}, .high = {0.07, 0.07, 0.30}}, frame);
    add_ghost(mesh.edges, body, frame, kBoothWallInward);
    mesh.parts.push_back(std::move(part));
}

}  // namespace

void add_booth(const study::Study& study, RoomMesh& mesh) {
    const room::Layout& layout = study.layout();
    const double base = lowest_floor_m(study);
    const std::vector<PortHole> holes = port_holes(layout, base);
    add_wall(layout.hall, holes, base, mesh);
    for (const PortHole& hole : holes)
        add_reveal(hole, layout.hall.length_m, mesh);
    for (int i = 0; i < static_cast<int>(layout.projectors.size()); ++i) {
        add_projector(study, i, mesh);
    }
}

}  // namespace rakeline::drawing
