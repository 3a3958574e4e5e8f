// SPDX-License-Identifier: MIT
#include "drawing/beam_marks.hpp"
#include "drawing/mesh_shapes.hpp"

/// The light between lens and picture: the sides of a pyramid over the picture's outline, and that
/// outline on the masking.
namespace rakeline::drawing {
namespace {

Part beam_part(const picture::PictureMap& map, const picture::PictureShape& shape, int projector) {
    Part beam{.material = Material::beam, .shows = {Shows::Kind::projector, projector}};
    const glm::dvec3 lens = map.pose().lens;
    const auto count = static_cast<unsigned>(shape.outline.size());
    const glm::dvec3 axis = map.pose().axis;
    beam.vertices.push_back({lens, -axis, glm::dvec2(0.0)});
    for (unsigned i = 0; i < count; ++i) {
        const glm::dvec2 here = shape.outline[i];
        const glm::dvec3 before =
            geometry::point_at(map.surface(), shape.outline[(i + count - 1) % count]);
        const glm::dvec3 at = geometry::point_at(map.surface(), here);
        const glm::dvec3 after = geometry::point_at(map.surface(), shape.outline[(i + 1) % count]);
        // Outward, since the outline runs counter-clockwise as seen from the lens.
        const glm::dvec3 normal = glm::cross(at - lens, after - before);
        const double length = glm::length(normal);
        beam.vertices.push_back({at, length > 0.0 ? normal / length : -axis, glm::dvec2(0.0, 1.0)});
    }
    for (unsigned i = 0; i < count; ++i) {
        const unsigned a = 1 + i;
        const unsigned b = 1 + (i + 1) % count;
        beam.indices.insert(beam.indices.end(), {0u, a, b});
    }
    return beam;
}

bool holds(const geometry::Rectangle& r, glm::dvec2 p) {
    return p.x > r.left && p.x < r.right && p.y > r.bottom && p.y < r.top;
}

/// The rim of the uncorrected picture, a hair in front of the masking that it falls on.
void add_rim(const picture::ProjectedPicture& picture,
             const geometry::Rectangle& opening,
             std::vector<Edge>& edges) {
    constexpr double kAhead_m = kMaskingAhead_m + 0.004;
    const geometry::Patch& surface = picture.map.surface();
    const auto& rim = picture.shape.outline;
    const auto before = [&](glm::dvec2 uv) {
        return geometry::point_at(surface, uv) + kAhead_m * geometry::normal_at(surface, uv);
    };
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const glm::dvec2 a = rim[i], b = rim[(i + 1) % rim.size()];
        const bool inside = holds(opening, 0.5 * (a + b));
        edges.push_back(
            {inside ? EdgeKind::shortfall : EdgeKind::picture, before(a), before(b), {}});
    }
}

/// An edge wherever the beam comes nearer to something than its limit allows.
void add_cuts(const study::Study& study,
              const picture::ProjectedPicture& picture,
              std::vector<Edge>& edges) {
    const Chosen pair{picture.projector, picture.format, nullptr, &picture};
    for (const BeamMark& mark : beam_marks(study, pair, base::UnitSystem::metric))
        if (mark.verdict == study::Verdict::missed)
            edges.push_back({EdgeKind::cut, mark.part, mark.beam, {}});
}

}  // namespace

void add_beams(const study::Study& study,
               std::optional<int> projector,
               std::optional<int> format,
               RoomMesh& mesh) {
    if (!format) return;
    for (const picture::ProjectedPicture& picture : study.picture.pictures) {
        if (picture.format != *format || picture.shape.outline.size() < 3) continue;
        if (projector && picture.projector != *projector) continue;
        mesh.beams.push_back(beam_part(picture.map, picture.shape, picture.projector));
        add_rim(picture, study.picture.openings.at(static_cast<std::size_t>(*format)).uv,
                mesh.edges);
        add_cuts(study, picture, mesh.edges);
        const glm::dvec3 lens = picture.map.pose().lens;
        for (const glm::dvec2& corner : picture.shape.corners) {
            mesh.edges.push_back(
                {EdgeKind::beam, lens, geometry::point_at(picture.map.surface(), corner), {}});
        }
    }
}

}  // namespace rakeline::drawing
