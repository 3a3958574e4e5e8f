// SPDX-License-Identifier: MIT
#include "drawing/room_mesh.hpp"

#include "drawing/studied_room.hpp"
#include "sight/blockers.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace rakeline;
using drawing::Material;
using drawing::Part;
using tests::studied;

namespace {

drawing::RoomMesh mesh_of(const study::Study& study, int format = 0) {
    drawing::DrawingChoice choice;
    choice.format = format;
    return drawing::room_mesh(study, choice);
}

std::vector<const Part*> parts_of(const drawing::RoomMesh& mesh, Material material) {
    std::vector<const Part*> found;
    for (const Part& part : mesh.parts) {
        if (part.material == material) found.push_back(&part);
    }
    return found;
}

std::vector<const Part*> all_parts(const drawing::RoomMesh& mesh) {
    std::vector<const Part*> all = {&mesh.seat, &mesh.wheelchair, &mesh.head, &mesh.body};
    for (const Part& part : mesh.parts)
        all.push_back(&part);
    for (const Part& part : mesh.beams)
        all.push_back(&part);
    return all;
}

struct Triangle {
    drawing::Vertex a, b, c;
    glm::dvec3 product() const {
        return glm::cross(b.position - a.position, c.position - a.position);
    }
    double area() const { return 0.5 * glm::length(product()); }
};

std::vector<Triangle> triangles_of(const Part& part) {
    std::vector<Triangle> out;
    for (std::size_t i = 0; i + 2 < part.indices.size(); i += 3) {
        out.push_back({part.vertices.at(part.indices[i]), part.vertices.at(part.indices[i + 1]),
                       part.vertices.at(part.indices[i + 2])});
    }
    return out;
}

double area_of(const std::vector<const Part*>& parts) {
    double area = 0.0;
    for (const Part* part : parts) {
        for (const Triangle& t : triangles_of(*part))
            area += t.area();
    }
    return area;
}

bool sound_vertex(const drawing::Vertex& v) {
    const bool finite = std::isfinite(v.position.x) && std::isfinite(v.position.y) &&
                        std::isfinite(v.position.z) && std::isfinite(v.uv.x) &&
                        std::isfinite(v.uv.y);
    return finite && std::abs(glm::length(v.normal) - 1.0) < 1e-9;
}

double lowest_floor(const study::Study& study) {
    double low = 0.0;
    for (const room::Platform& platform : study.seats.platforms) {
        for (const glm::dvec3& corner : platform.corners)
            low = std::min(low, corner.y);
    }
    return low;
}

/// Heights at which floor triangles that face upward pass over a point.
std::vector<double> floors_under(const drawing::RoomMesh& mesh, const glm::dvec3& p) {
    std::vector<double> heights;
    for (const Part* part : parts_of(mesh, Material::floor)) {
        for (const Triangle& t : triangles_of(*part)) {
            const glm::dvec3 n = t.product();
            if (n.y <= 1e-9) continue;
            const auto left_of = [&](const glm::dvec3& from, const glm::dvec3& to) {
                // Counter-clockwise from above means z runs down the page.
                return (to.x - from.x) * (p.z - from.z) - (to.z - from.z) * (p.x - from.x) <= 1e-9;
            };
            const bool inside = left_of(t.a.position, t.b.position) &&
                                left_of(t.b.position, t.c.position) &&
                                left_of(t.c.position, t.a.position);
            if (!inside) continue;
            const glm::dvec3 off = p - t.a.position;
            heights.push_back(t.a.position.y - (n.x * off.x + n.z * off.z) / n.y);
        }
    }
    return heights;
}

}  // namespace

TEST_SUITE("drawing/room_mesh") {
    TEST_CASE("property: every part of every demo room and format is sound triangles") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
                const drawing::RoomMesh mesh = mesh_of(study, static_cast<int>(f));
                for (const Part* part : all_parts(mesh)) {
                    INFO(name, " format ", f, " material ", static_cast<int>(part->material));
                    CHECK(part->indices.size() % 3 == 0);
                    CHECK_FALSE(part->indices.empty());
                    CHECK(std::ranges::all_of(
                        part->indices, [&](unsigned i) { return i < part->vertices.size(); }));
                    CHECK(std::ranges::all_of(part->vertices, sound_vertex));
                }
            }
        }
    }

    TEST_CASE("property: triangles turn counter-clockwise as their normals see them") {
        for (const char* name : tests::kDemoRooms) {
            const drawing::RoomMesh mesh = mesh_of(studied(name));
            for (const Part* part : all_parts(mesh)) {
                INFO(name, " material ", static_cast<int>(part->material));
                CHECK(std::ranges::all_of(triangles_of(*part), [](const Triangle& t) {
                    return glm::dot(t.product(), t.a.normal + t.b.normal + t.c.normal) > 0.0;
                }));
            }
        }
    }

    TEST_CASE("every seat stands once, on its reference point and facing the way it faces") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            const drawing::RoomMesh mesh = mesh_of(study);
            REQUIRE(mesh.seats.size() == study.seats.seats.size());
            REQUIRE(mesh.heads.size() == study.seats.seats.size());
            for (std::size_t i = 0; i < mesh.seats.size(); ++i) {
                const room::Seat& seat = study.seats.seats[i];
                const glm::dmat4& place = mesh.seats[i].room_from_seat;
                CHECK(mesh.seats[i].seat == static_cast<int>(i));
                CHECK(mesh.seats[i].wheelchair == seat.wheelchair);
                CHECK(glm::distance(glm::dvec3(place[3]), seat.floor) < 1e-12);
                CHECK(glm::distance(glm::dvec3(place * glm::dvec4(0, 0, -1, 0)), seat.facing) <
                      1e-12);
                CHECK(glm::distance(glm::dvec3(mesh.heads[i].room_from_seat[3]), seat.eye) < 1e-12);
                // A place seen from behind keeps left and right: no mirroring.
                const glm::dmat3 axes(place);
                CHECK(glm::dot(glm::cross(axes[0], axes[1]), axes[2]) > 0.0);
            }
        }
    }

    TEST_CASE("a chair is a few dozen triangles, stands on the floor and stays below the eye") {
        const Part chair = drawing::seat_part();
        const std::size_t triangles = chair.indices.size() / 3;
        CHECK(triangles >= 60);
        CHECK(triangles <= 150);
        double low = 1e9, high = -1e9;
        for (const drawing::Vertex& v : chair.vertices) {
            low = std::min(low, v.position.y);
            high = std::max(high, v.position.y);
            CHECK(std::abs(v.position.x) <= 0.5 * drawing::kSeatPartPitch_m + 0.031);
        }
        tests::check_close(low, 0.0, tests::absolute(1e-12, "it stands on the floor"));
        CHECK(high > 0.85);
        CHECK(high < room::Audience().eye_height_m - 0.1);
    }

    TEST_CASE("a head has the audience's breadth and reaches its crown") {
        room::Audience audience;
        audience.eye_to_crown_m = 0.131;
        audience.head_breadth_m = 0.171;
        const Part head = drawing::head_part(audience);
        double crown = 0.0, half_breadth = 0.0;
        for (const drawing::Vertex& v : head.vertices) {
            crown = std::max(crown, v.position.y);
            if (v.position.y > -0.01) half_breadth = std::max(half_breadth, v.position.x);
        }
        tests::check_close(crown, 0.131, tests::absolute(1e-12, "the pole is a vertex"));
        tests::check_close(half_breadth, 0.5 * 0.171,
                           tests::absolute(1e-12, "the equator's side is a vertex"));
    }

    TEST_CASE(
        "a head is the spheroid that sight computes with: as deep as broad, chin as low as crown") {
        room::Audience audience;
        audience.eye_to_crown_m = 0.131;
        audience.head_breadth_m = 0.171;
        for (const drawing::Vertex& v : drawing::head_part(audience).vertices) {
            const glm::dvec3 unit = v.position / glm::dvec3(0.0855, 0.131, 0.0855);
            tests::check_close(glm::length(unit), 1.0, tests::absolute(1e-12, "on the spheroid"));
        }
    }

    TEST_CASE("shoulders and seat backs stand where sight has its walls, each with the same edge") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            const drawing::RoomMesh mesh = mesh_of(study);
            const room::Layout& layout = study.layout();
            std::vector<sight::Wall> walls =
                sight::full_house(study.seats, layout.seating, layout.audience).walls;
            std::erase_if(walls, [](const sight::Wall& wall) { return wall.eye < 0; });
            REQUIRE(mesh.bodies.size() == walls.size());
            for (std::size_t i = 0; i < walls.size(); ++i) {
                const glm::dmat4& place = mesh.bodies[i].room_from_seat;
                CHECK(mesh.bodies[i].seat == walls[i].eye);
                const glm::dvec3 left(place * glm::dvec4(-0.5, 1.0, 0.0, 1.0));
                const glm::dvec3 right(place * glm::dvec4(0.5, 1.0, 0.0, 1.0));
                CHECK(glm::distance(left, walls[i].from) < 1e-12);
                CHECK(glm::distance(right, walls[i].to) < 1e-12);
            }
        }
    }

    TEST_CASE("a chair's back stays under the wall that sight takes for it") {
        for (const drawing::Vertex& v : drawing::seat_part().vertices)
            CHECK(v.position.y < drawing::kSeatPartBack_m);
    }

    TEST_CASE("every seat of the demo rooms has floor exactly under it") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            const drawing::RoomMesh mesh = mesh_of(study);
            for (const room::Seat& seat : study.seats.seats) {
                INFO(name, " ", seat.name, " at ", seat.floor.y);
                const std::vector<double> floors = floors_under(mesh, seat.floor);
                CHECK(std::ranges::any_of(
                    floors, [&](double y) { return std::abs(y - seat.floor.y) < 0.03; }));
                // Nothing stands between the floor and the eye.
                CHECK(std::ranges::none_of(
                    floors, [&](double y) { return y > seat.floor.y + 0.03 && y < seat.eye.y; }));
            }
        }
    }

    TEST_CASE("a beam runs from the lens to the picture's outline") {
        const study::Study& study = studied("steep-240");
        for (const picture::ProjectedPicture& picture : study.picture.pictures) {
            drawing::DrawingChoice choice;
            choice.projector = picture.projector;
            choice.format = picture.format;
            const drawing::RoomMesh mesh = drawing::room_mesh(study, choice);
            REQUIRE(mesh.beams.size() == 1);
            const Part& beam = mesh.beams.front();
            CHECK(beam.shows == drawing::Shows{drawing::Shows::Kind::projector, picture.projector});
            const room::Projector& projector =
                study.layout().projectors[static_cast<std::size_t>(picture.projector)];
            CHECK(glm::distance(beam.vertices.front().position,
                                glm::dvec3(projector.across_m, projector.up_m, projector.back_m)) <
                  1e-12);
            REQUIRE(beam.vertices.size() == picture.shape.outline.size() + 1);
            for (std::size_t i = 0; i < picture.shape.outline.size(); ++i) {
                CHECK(glm::distance(beam.vertices[i + 1].position,
                                    geometry::point_at(study.picture.surface,
                                                       picture.shape.outline[i])) < 1e-12);
            }
        }
    }

    TEST_CASE("without a projector chosen all that show the format have a beam") {
        const study::Study& study = studied("grand-620");
        for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
            std::size_t showing = 0;
            for (const auto& picture : study.picture.pictures) {
                if (picture.format == static_cast<int>(f)) ++showing;
            }
            CHECK(mesh_of(study, static_cast<int>(f)).beams.size() == showing);
        }
    }

    TEST_CASE("the picture fills the masked opening of the format, uv from its lower left corner") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
                const drawing::RoomMesh mesh = mesh_of(study, static_cast<int>(f));
                const picture::Opening& opening = study.picture.openings[f];
                const auto screens = parts_of(mesh, Material::screen);
                REQUIRE(screens.size() == 1);
                for (const drawing::Vertex& v : screens.front()->vertices) {
                    const glm::dvec3 expected = picture::opening_point(
                        study.picture.surface, opening, 2.0 * v.uv.x - 1.0, 2.0 * v.uv.y - 1.0);
                    CHECK(glm::distance(v.position, expected) < 1e-9);
                }
                tests::check_close(
                    area_of(screens), opening.area_m2,
                    tests::relative(2e-3, "chords of a curved sheet are shorter than its arc"));
            }
        }
    }

    TEST_CASE("the masking leaves the opening free, in every format") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            for (std::size_t f = 0; f < study.picture.openings.size(); ++f) {
                const geometry::Rectangle& open = study.picture.openings[f].uv;
                const drawing::RoomMesh mesh = mesh_of(study, static_cast<int>(f));
                for (const Triangle& t : triangles_of(*parts_of(mesh, Material::masking).at(0))) {
                    const glm::dvec2 middle = geometry::coordinates_of(
                        study.picture.surface, (t.a.position + t.b.position + t.c.position) / 3.0);
                    const bool inside = middle.x > open.left && middle.x < open.right &&
                                        middle.y > open.bottom && middle.y < open.top;
                    CHECK_FALSE(inside);
                }
            }
        }
    }

    TEST_CASE("the booth wall is whole but for its ports") {
        const study::Study& study = studied("converted-hall-96");
        const room::Hall& hall = study.layout().hall;
        double ports = 0.0;
        for (const room::Projector& p : study.layout().projectors) {
            ports += p.port.width_m * p.port.height_m;
        }
        const double whole =
            2.0 * room::half_width_at(hall, hall.length_m) * (hall.height_m - lowest_floor(study));
        REQUIRE(ports > 0.0);
        tests::check_close(area_of(parts_of(mesh_of(study), Material::booth_wall)), whole - ports,
                           tests::relative(1e-9, "the same sum by another road"));
    }

    TEST_CASE("ports that overlap leave one hole, not a hole cut twice") {
        study::Study study = studied("converted-hall-96");
        room::Brief brief = *study.brief;
        REQUIRE(brief.layout.projectors.size() >= 2);
        brief.layout.projectors.resize(2);
        brief.layout.projectors[1].port = brief.layout.projectors[0].port;
        brief.layout.projectors[1].port.across_m += 0.5 * brief.layout.projectors[0].port.width_m;
        study.brief = std::make_shared<const room::Brief>(brief);
        drawing::RoomMesh mesh;
        drawing::add_booth(study, mesh);
        const room::Port& port = brief.layout.projectors[0].port;
        const room::Hall& hall = brief.layout.hall;
        const double whole =
            2.0 * room::half_width_at(hall, hall.length_m) * (hall.height_m - lowest_floor(study));
        tests::check_close(area_of(parts_of(mesh, Material::booth_wall)),
                           whole - 1.5 * port.width_m * port.height_m,
                           tests::relative(1e-9, "the same sum by another road"));
    }

    TEST_CASE("walls face the room, each a part of its own") {
        const study::Study& study = studied("grand-620");
        const room::Hall& hall = study.layout().hall;
        const drawing::RoomMesh mesh = mesh_of(study);
        const glm::dvec3 middle(0.0, 0.5 * hall.height_m, 0.5 * hall.length_m);
        std::vector<const Part*> shell = parts_of(mesh, Material::wall);
        CHECK(shell.size() == 3);
        for (const Material m : {Material::booth_wall, Material::ceiling}) {
            for (const Part* part : parts_of(mesh, m))
                shell.push_back(part);
        }
        CHECK(shell.size() == 5);
        for (const Part* part : shell) {
            for (const drawing::Vertex& v : part->vertices) {
                CHECK(glm::dot(v.normal, middle - v.position) > 0.0);
            }
        }
    }

    TEST_CASE("a loudspeaker's box has its front at the acoustic centre, turned as it is aimed") {
        study::Study study = studied("screening-24");
        room::Brief brief = *study.brief;
        room::Loudspeaker aimed;
        aimed.across_m = 1.0;
        aimed.up_m = 2.0;
        aimed.back_m = 0.5;
        aimed.yaw_rad = 0.3;
        aimed.pitch_rad = 0.2;
        brief.layout.loudspeakers = {aimed};
        study.brief = std::make_shared<const room::Brief>(brief);
        drawing::RoomMesh mesh;
        drawing::add_loudspeakers(study, mesh);
        REQUIRE(mesh.parts.size() == 1);
        const glm::dvec3 axis(std::sin(0.3) * std::cos(0.2), -std::sin(0.2),
                              std::cos(0.3) * std::cos(0.2));
        glm::dvec3 front(0.0);
        double count = 0.0;
        double farthest = -1e9;
        for (const drawing::Vertex& v : mesh.parts.front().vertices) {
            const double ahead = glm::dot(v.position - glm::dvec3(1.0, 2.0, 0.5), axis);
            farthest = std::max(farthest, ahead);
            if (v.uv.x == 1.0) front += v.position, count += 1.0;
        }
        CHECK(farthest < 0.03);
        REQUIRE(count > 0.0);
        CHECK(glm::distance(front / count, glm::dvec3(1.0, 2.0, 0.5)) < 1e-9);
    }

    TEST_CASE("the picture's light follows the study's nine points, largest 1") {
        const study::Study& study = studied("steep-240");
        const drawing::RoomMesh mesh = mesh_of(study, study.picture.pictures.front().format);
        const auto& lux = study.light.lights.front().illuminance_lx;
        const double most = *std::ranges::max_element(lux);
        tests::check_close(*std::ranges::max_element(mesh.picture_light), 1.0,
                           tests::absolute(1e-12, "over its own largest value"));
        tests::check_close(mesh.picture_light[4], lux[light::kCentre] / most,
                           tests::absolute(1e-12, "the same value"));
        tests::check_close(mesh.picture_light[0], lux[light::kBottomLeft] / most,
                           tests::absolute(1e-12, "the same value"));
        tests::check_close(mesh.picture_light[8], lux[light::kTopRight] / most,
                           tests::absolute(1e-12, "the same value"));
    }

    TEST_CASE("every step up has its edge drawn, at the height of the tread") {
        const study::Study& study = studied("steep-240");
        std::set<long> treads;
        for (const room::Row& row : study.seats.rows) {
            if (row.centre_floor.y > 0.01) treads.insert(std::lround(row.centre_floor.y * 100.0));
        }
        std::set<long> edges;
        for (const drawing::Edge& edge : mesh_of(study).edges) {
            if (edge.kind == drawing::EdgeKind::step) {
                edges.insert(std::lround((edge.from.y - 0.004) * 100.0));
            }
        }
        REQUIRE(treads.size() > 3);
        CHECK(std::ranges::includes(edges, treads));
    }

    TEST_CASE("the picture's rim lies a hair before the masking, and shows where it falls short") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            for (const auto& picture : study.picture.pictures) {
                drawing::DrawingChoice choice;
                choice.projector = picture.projector;
                choice.format = picture.format;
                std::size_t edges = 0, short_edges = 0;
                for (const drawing::Edge& edge : drawing::room_mesh(study, choice).edges) {
                    const bool inside = edge.kind == drawing::EdgeKind::shortfall;
                    if (!inside && edge.kind != drawing::EdgeKind::picture) continue;
                    ++edges;
                    short_edges += inside;
                    const auto uv = geometry::coordinates_of(study.picture.surface, edge.from);
                    const double off =
                        glm::length(edge.from - geometry::point_at(study.picture.surface, uv));
                    CHECK(off > 0.02);
                    CHECK(off < 0.03);
                }
                CHECK(edges == picture.shape.outline.size());
                REQUIRE(picture.covering);
                CHECK((short_edges > 0) == !picture.covering->covers());
            }
        }
    }
}
